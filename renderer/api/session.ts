// The session token: in the desktop window from the preload, in a browser traded once for the code in the link.

/** What the desktop preload offers; absent in a browser. */
export type DesktopBridge = {
  session: () => Promise<string>
  /** A ref for a file of this computer, as the upload route gives one in a browser. */
  fileRef: (file: File) => Promise<string>
}

declare global {
  interface Window {
    plugtray?: DesktopBridge
  }
}

export type Session = { token: string; desktop: DesktopBridge | undefined }

const kept = 'plugtray-session'

/** Null when there is neither a valid code nor a session of this tab. */
export async function startSession(): Promise<Session | null> {
  const desktop = window.plugtray
  if (desktop) return { token: await desktop.session(), desktop }
  const code = /^#code=([A-Za-z0-9_-]+)$/.exec(window.location.hash)?.[1]
  if (code) {
    // The code is of no use to anyone any more, but it need not stay in the address either.
    window.history.replaceState(null, '', '#/')
    const answer = await fetch('/session', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code }),
    })
    const body: unknown = answer.ok ? await answer.json() : null
    if (typeof body === 'object' && body !== null && 'token' in body && typeof body.token === 'string') {
      window.sessionStorage.setItem(kept, body.token)
      return { token: body.token, desktop: undefined }
    }
  }
  const token = window.sessionStorage.getItem(kept)
  return token ? { token, desktop: undefined } : null
}

// The one origin of the desktop page, and whether an address belongs to it. Parsed, never compared by prefix.

export const scheme = 'app'
export const host = 'plugtray'
export const origin = `${scheme}://${host}`

export function isOurs(address: string): boolean {
  try {
    const url = new URL(address)
    return url.protocol === `${scheme}:` && url.host === host && url.username === '' && url.port === ''
  } catch {
    return false
  }
}

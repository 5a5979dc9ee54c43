// Opens the page in an app-style window of a Chromium-family browser, where one is installed and there is a display.
import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const browsers: Partial<Record<NodeJS.Platform, string[]>> = {
  linux: [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/microsoft-edge',
  ],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: ['ProgramFiles', 'ProgramFiles(x86)'].flatMap(name => {
    const folder = process.env[name]
    return folder
      ? [
          join(folder, 'Google/Chrome/Application/chrome.exe'),
          join(folder, 'Microsoft/Edge/Application/msedge.exe'),
        ]
      : []
  }),
}

const hasDisplay = (): boolean =>
  process.platform !== 'linux' || Boolean(process.env.DISPLAY) || Boolean(process.env.WAYLAND_DISPLAY)

/** Returns what ends the window and clears its profile; does nothing where no window can be opened. */
export function openAppWindow(link: string): () => void {
  const browser = hasDisplay() ? browsers[process.platform]?.find(path => existsSync(path)) : undefined
  if (!browser) return () => {}
  const profile = mkdtempSync(join(tmpdir(), 'plugtray-window-'))
  const window = spawn(
    browser,
    [`--app=${link}`, `--user-data-dir=${profile}`, '--no-first-run', '--no-default-browser-check'],
    {
      stdio: 'ignore',
    },
  )
  // A browser that cannot start is no fault of the app: the address is printed in any case.
  window.on('error', () => undefined)
  return () => {
    window.kill()
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
  }
}

// The one window, with every isolation that Electron offers.
import { fileURLToPath } from 'node:url'
import { BrowserWindow, type WebPreferences } from 'electron'
import { origin } from './origin.ts'

export const webPreferences: WebPreferences = {
  preload: fileURLToPath(new URL('../preload/preload.cjs', import.meta.url)),
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  // Its dictionaries would be fetched from a server.
  spellcheck: false,
}

/** Opens the window; it is shown once there is something to see. */
export function openWindow(): BrowserWindow {
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 800,
    minHeight: 560,
    show: false,
    webPreferences,
  })
  window.once('ready-to-show', () => window.show())
  return window
}

/** Apart from opening, so that whoever answers the page knows the window before the page asks. */
export const loadPage = (window: BrowserWindow): Promise<void> => window.loadURL(`${origin}/`)

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
  spellcheck: false,
}

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
  void window.loadURL(`${origin}/`)
  return window
}

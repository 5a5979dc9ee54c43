// A small double of Electron: it keeps what the desktop host asks for and lets a test play the runtime's part. It shows
// what our code asks, not that Electron obeys; that is for a run with the real runtime.
import { EventEmitter } from 'node:events'

export type Frame = { url: string; parent: Frame | null }
export type SenderEvent = { sender: Contents; senderFrame: Frame | null }
type Handler = (event: SenderEvent, value: unknown) => unknown
type FetchHandler = (request: Request) => Response | Promise<Response>
type Preventable = { preventDefault: () => void; defaultPrevented: boolean; url?: string }

export const preventable = (url?: string): Preventable => ({
  ...(url === undefined ? {} : { url }),
  defaultPrevented: false,
  preventDefault() {
    this.defaultPrevented = true
  },
})

export class Contents extends EventEmitter {
  mainFrame: Frame = { url: '', parent: null }
  openHandler: (details: { url: string }) => { action: string } = () => ({ action: 'allow' })
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }) {
    this.openHandler = handler
  }
}

/** Everything asked for so far, in order where the order matters. */
export const asked = {
  calls: [] as string[],
  schemes: [] as { scheme: string; privileges: Record<string, boolean> }[],
  windows: [] as BrowserWindow[],
  protocols: new Map<string, FetchHandler>(),
  channels: new Map<string, Handler>(),
  errorBoxes: [] as { title: string; content: string }[],
  menu: [] as unknown[],
  ended: false,
  exitCode: undefined as number | undefined,
}

class App extends EventEmitter {
  enableSandbox() {
    asked.calls.push('enableSandbox')
  }
  whenReady() {
    asked.calls.push('whenReady')
    return Promise.resolve()
  }
  quit() {
    const event = preventable()
    this.emit('will-quit', event)
    if (!event.defaultPrevented) asked.ended = true
  }
  exit(code: number) {
    asked.exitCode = code
    asked.ended = true
  }
}

export const app = new App()

export class BrowserWindow extends EventEmitter {
  readonly webContents = new Contents()
  shown = false
  readonly options: Record<string, unknown>
  constructor(options: Record<string, unknown>) {
    super()
    this.options = options
    asked.windows.push(this)
    app.emit('web-contents-created', {}, this.webContents)
  }
  loadURL(url: string) {
    asked.calls.push(`loadURL ${url}`)
    this.webContents.mainFrame = { url, parent: null }
    return Promise.resolve()
  }
  show() {
    this.shown = true
  }
}

export const protocol = {
  registerSchemesAsPrivileged(schemes: typeof asked.schemes) {
    asked.calls.push('registerSchemesAsPrivileged')
    asked.schemes.push(...schemes)
  },
  handle(scheme: string, handler: FetchHandler) {
    asked.protocols.set(scheme, handler)
  },
}

export const ipcMain = {
  handle(channel: string, handler: Handler) {
    asked.channels.set(channel, handler)
  },
}

type RequestHandler = (
  contents: Contents,
  permission: string,
  answer: (granted: boolean) => void,
  details: { isMainFrame: boolean; requestingUrl: string },
) => void
type CheckHandler = (
  contents: Contents | null,
  permission: string,
  origin: string,
  details: { isMainFrame: boolean },
) => boolean

/** Electron's own behaviour where nobody decides: it grants. */
export const decisions = {
  request: undefined as RequestHandler | undefined,
  check: undefined as CheckHandler | undefined,
  device: undefined as (() => boolean) | undefined,
  displayMedia: undefined as ((request: object, answer: (streams: object) => void) => void) | undefined,
}

export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler: RequestHandler) => (decisions.request = handler),
    setPermissionCheckHandler: (handler: CheckHandler) => (decisions.check = handler),
    setDevicePermissionHandler: (handler: () => boolean) => (decisions.device = handler),
    setDisplayMediaRequestHandler: (handler: typeof decisions.displayMedia) =>
      (decisions.displayMedia = handler),
  },
}

export const dialog = {
  showErrorBox: (title: string, content: string) => asked.errorBoxes.push({ title, content }),
}

export const Menu = {
  buildFromTemplate: (template: unknown[]) => template,
  setApplicationMenu: (menu: unknown[]) => asked.menu.push(...menu),
}

/** As the runtime would at a new start. */
export function forgetEverything(): void {
  app.removeAllListeners()
  Object.assign(asked, {
    calls: [],
    schemes: [],
    windows: [],
    protocols: new Map(),
    channels: new Map(),
    errorBoxes: [],
    menu: [],
    ended: false,
    exitCode: undefined,
  })
}

/** What the page's preload would ask through IPC. */
export async function askAsPage(channel: string, value?: unknown): Promise<unknown> {
  const contents = asked.windows.at(-1)?.webContents
  const handler = asked.channels.get(channel)
  if (!contents || !handler) throw new Error(`nobody answers ${channel}`)
  return handler({ sender: contents, senderFrame: contents.mainFrame }, value)
}

// E4 to E6, E8 to E14, P3: what the desktop host asks of Electron, seen on a double of it. That Electron obeys is for the
// smoke test with the real runtime.
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { start } from '../../electron/main.ts'
import { appVersion } from '../../electron/places-on-disk.ts'
import { openCatalogue } from '../../electron/services/store/catalogue.ts'
import * as electron from '../doubles/electron.ts'

vi.mock('electron', () => import('../doubles/electron.ts'))

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-desktop-'))
  const catalogue = join(folder, 'catalogue')
  // Not new any more: a new one would be filled with the demonstration jobs meanwhile.
  await (await openCatalogue(catalogue, { appVersion })).close()
  process.env.PLUGTRAY_CATALOGUE = catalogue
  await start()
})
afterAll(async () => {
  electron.app.emit('window-all-closed')
  await vi.waitUntil(() => electron.asked.ended)
  delete process.env.PLUGTRAY_CATALOGUE
  await rm(folder, { recursive: true, force: true })
})

const onlyWindow = () => {
  const [window, ...more] = electron.asked.windows
  if (!window || more.length > 0) throw new Error(`${more.length + 1} windows`)
  return window
}

it('E4: turns the sandbox on and names its scheme before Electron is ready, the page last', () => {
  expect(electron.asked.calls).toEqual([
    'enableSandbox',
    'registerSchemesAsPrivileged',
    'whenReady',
    'loadURL app://plugtray/',
  ])
})

it('P3: the scheme has these privileges and no others', () => {
  expect(electron.asked.schemes).toEqual([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ])
})

it('E2, E3, E4, E6, E8, E9, E10, E11, E13, C7: the window has exactly these preferences', () => {
  expect(onlyWindow().options.webPreferences).toEqual({
    preload: expect.stringMatching(/preload[\\/]preload\.cjs$/),
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
  })
})

describe('E5: permissions', () => {
  /** Every name in Electron's own types, so that a new one is not forgotten. */
  const namesIn = async (method: string): Promise<string[]> => {
    const types = await readFile('node_modules/electron/electron.d.ts', 'utf8')
    const declared = new RegExp(`${method}\\(handler: \\(\\(.*?permission: ([^,)]*)`).exec(types)?.[1] ?? ''
    return [...declared.matchAll(/'([^']+)'/g)].map(match => match[1] ?? '')
  }
  const ours = 'app://plugtray/'
  const requested = (permission: string, requestingUrl = ours, isMainFrame = true) => {
    let granted: boolean | undefined
    electron.decisions.request?.(
      onlyWindow().webContents,
      permission,
      answer => {
        granted = answer
      },
      { isMainFrame, requestingUrl },
    )
    return granted
  }
  const checked = (permission: string, origin = ours, isMainFrame = true) =>
    electron.decisions.check?.(onlyWindow().webContents, permission, origin, { isMainFrame })

  it('are denied, but for putting text on the clipboard', async () => {
    const forRequest = await namesIn('setPermissionRequestHandler')
    const forCheck = await namesIn('setPermissionCheckHandler')
    expect(forRequest).toContain('media')
    expect(forCheck).toContain('media')
    expect(forRequest.filter(name => requested(name))).toEqual(['clipboard-sanitized-write'])
    expect(forCheck.filter(name => checked(name))).toEqual(['clipboard-sanitized-write'])
    expect(requested('a permission of the future')).toBe(false)
    expect(checked('a permission of the future')).toBe(false)
  })
  it('are denied to frames inside the page and to others', () => {
    const name = 'clipboard-sanitized-write'
    for (const url of [
      'https://evil.test/',
      'app://plugtray.evil/',
      'app://evil/',
      'file:///etc/passwd',
      '',
    ]) {
      expect(requested(name, url)).toBe(false)
      expect(checked(name, url)).toBe(false)
    }
    expect(requested(name, ours, false)).toBe(false)
    expect(checked(name, ours, false)).toBe(false)
  })
  it('are denied for devices and for the screen', () => {
    expect(electron.decisions.device?.()).toBe(false)
    let streams: object | undefined
    electron.decisions.displayMedia?.({}, given => {
      streams = given
    })
    expect(streams).toEqual({})
  })
})

describe('E11 to E14: no way out of the page', () => {
  const foreign = [
    'https://evil.test/',
    'http://127.0.0.1:80/',
    'file:///etc/passwd',
    'app://plugtray.evil/',
    'app://evil/',
    'app://plugtray@evil/',
    'app://user@plugtray/',
    'app://plugtray:1/',
    'apps://plugtray/',
    'javascript:alert(1)',
    'data:text/html,x',
    'about:blank',
    'not an address',
    '',
  ]
  it.each(['will-navigate', 'will-frame-navigate', 'will-redirect'])('%s is refused', name => {
    const passed = foreign.filter(url => {
      const event = electron.preventable(url)
      onlyWindow().webContents.emit(name, event)
      return !event.defaultPrevented
    })
    expect(passed).toEqual([])
    const own = electron.preventable('app://plugtray/#/jobs')
    onlyWindow().webContents.emit(name, own)
    expect(own.defaultPrevented).toBe(false)
  })
  it('an embedded guest is refused', () => {
    const event = electron.preventable()
    onlyWindow().webContents.emit('will-attach-webview', event)
    expect(event.defaultPrevented).toBe(true)
  })
  it('a new window is refused, our own address too', () => {
    for (const url of [...foreign, 'app://plugtray/'])
      expect(onlyWindow().webContents.openHandler({ url })).toEqual({ action: 'deny' })
  })
  it('the same holds for whatever contents come later', () => {
    const later = new electron.Contents()
    electron.app.emit('web-contents-created', {}, later)
    const event = electron.preventable('https://evil.test/')
    later.emit('will-navigate', event)
    expect(event.defaultPrevented).toBe(true)
    expect(later.openHandler({ url: 'https://evil.test/' })).toEqual({ action: 'deny' })
  })
  it('the menu leads nowhere', () => {
    const text = JSON.stringify(electron.asked.menu)
    expect(electron.asked.menu.length).toBeGreaterThan(0)
    expect(text).not.toMatch(/http|help|toggleDevTools|reload/i)
  })
})

describe('E7, P1: the scheme', () => {
  const ask = (url: string, headers: Record<string, string> = {}) =>
    electron.asked.protocols.get('app')?.(new Request(url, { headers }))
  it('serves the page with its policy', async () => {
    const answer = await ask('app://plugtray/')
    expect(answer?.status).toBe(200)
    expect(answer?.headers.get('content-security-policy')).toContain("default-src 'none'")
  })
  it.each(['app://evil/', 'app://plugtray.evil/', 'app://plugtray:1/', 'app://user@plugtray/'])(
    '404 for %s',
    async url => {
      // Node refuses to make a request with a user in it; Electron would not.
      const request = new Request('app://plugtray/')
      Object.defineProperty(request, 'url', { value: url })
      expect((await electron.asked.protocols.get('app')?.(request))?.status).toBe(404)
    },
  )
  it('403 for another origin', async () => {
    expect((await ask('app://plugtray/', { origin: 'https://evil.test' }))?.status).toBe(403)
    expect((await ask('app://plugtray/', { origin: 'null' }))?.status).toBe(403)
    expect((await ask('app://plugtray/', { origin: 'app://plugtray' }))?.status).toBe(200)
  })
})

it('shows the window once there is something to see', () => {
  expect(onlyWindow().shown).toBe(false)
  onlyWindow().emit('ready-to-show')
  expect(onlyWindow().shown).toBe(true)
})

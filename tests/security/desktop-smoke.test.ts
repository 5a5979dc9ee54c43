// The built desktop app in the real runtime: E1 to E4, E13, E14, E20 as Electron itself obeys them. Skips, saying so,
// where the runtime or a display is missing; the other desktop tests run on a double and cannot stand in for this one.
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { _electron, type ElectronApplication, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { findRuntime } from '../../scripts/desktop-runtime.js'
import { appVersion } from '../../electron/places-on-disk.ts'
import { openCatalogue } from '../../electron/services/store/catalogue.ts'

const root = resolve(import.meta.dirname, '../..')
const program = findRuntime(root)
const hasDisplay =
  process.platform !== 'linux' || Boolean(process.env.DISPLAY) || Boolean(process.env.WAYLAND_DISPLAY)
const missing = [...(program ? [] : ['the Electron runtime']), ...(hasDisplay ? [] : ['a display'])]

if (missing.length > 0)
  console.warn(
    `Skipped, nothing proven: the desktop app in the real runtime. Missing here: ${missing.join(', ')}.`,
  )

describe.skipIf(missing.length > 0)('the desktop app in the real runtime', () => {
  let folder = ''
  let app: ElectronApplication
  let page: Page
  const foreign: string[] = []

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'plugtray-smoke-'))
    const catalogue = join(folder, 'catalogue')
    await (await openCatalogue(catalogue, { appVersion })).close()
    const env = Object.entries({ ...process.env, PLUGTRAY_CATALOGUE: catalogue })
    app = await _electron.launch({
      executablePath: program ?? '',
      args: [root],
      env: Object.fromEntries(env.flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]))),
    })
    page = await app.firstWindow()
    page.on('request', request => {
      if (!/^(app|blob|data):/.test(request.url())) foreign.push(request.url())
    })
    await page.locator('.shell').waitFor()
  }, 60_000)
  afterAll(async () => {
    await app.close()
    await rm(folder, { recursive: true, force: true })
  })

  it('shows the page from its own scheme, with a session', async () => {
    expect(page.url()).toMatch(/^app:\/\/plugtray\//)
    await page.getByRole('button', { name: 'New job' }).first().waitFor()
  })
  it('E2, E4, E20: gives the page two functions and nothing of Node or Electron', async () => {
    const seen: unknown = await page.evaluate(() => ({
      bridge: Object.keys(window.plugtray ?? {}),
      require: typeof Reflect.get(window, 'require'),
      process: typeof Reflect.get(window, 'process'),
      module: typeof Reflect.get(window, 'module'),
    }))
    expect(seen).toEqual({
      bridge: ['session', 'fileRef'],
      require: 'undefined',
      process: 'undefined',
      module: 'undefined',
    })
  })
  it('E3: a page that bends its own built-ins does not bend the preload', async () => {
    const token: unknown = await page.evaluate(() => {
      const bent = () => {
        throw new Error('bent')
      }
      Reflect.set(Array.prototype, 'push', bent)
      Reflect.set(JSON, 'parse', bent)
      return window.plugtray?.session()
    })
    expect(token).toMatch(/^[A-Za-z0-9_-]{43}$/)
    await page.reload()
    await page.locator('.shell').waitFor()
  })
  it('E13, E14: leads nowhere else and opens no other window', async () => {
    await page.evaluate(() => {
      window.open('https://evil.test/')
      window.location.href = 'https://evil.test/'
    })
    await page.waitForTimeout(500)
    expect(page.url()).toMatch(/^app:\/\/plugtray\//)
    expect(app.windows()).toHaveLength(1)
  })
  it('E1: asked for nothing outside the app', () => {
    expect(foreign).toEqual([])
  })
})

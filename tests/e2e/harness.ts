// The built app behind the browser host, in a real Chromium with a fresh profile and a fresh catalogue.
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { openCatalogue } from '../../electron/services/store/catalogue.ts'
import { type Browser, chromium, type Page } from 'playwright-core'

const root = resolve(import.meta.dirname, '../..')

const flags = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

export type App = {
  page: Page
  browser: Browser
  catalogue: string
  /** What the page complained of: console errors, policy violations, uncaught exceptions. */
  complaints: string[]
  /** Addresses outside the app that the page asked for. */
  foreign: string[]
  /** Kills the host as a crash would and starts another on the same catalogue. */
  restart: (signal?: NodeJS.Signals) => Promise<void>
  close: () => Promise<void>
}

async function startHost(catalogue: string): Promise<{ host: ChildProcess; link: string }> {
  const host = spawn(
    process.execPath,
    [join(root, 'out/main/browser-host.js'), '--no-open', '--catalogue', catalogue],
    {
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  )
  const link = await new Promise<string>((found, failed) => {
    let text = ''
    host.stdout.on('data', (chunk: Buffer) => {
      text += chunk.toString()
      const address = /Plugtray is at (\S+)/.exec(text)?.[1]
      if (address) found(address)
    })
    host.on('exit', code => failed(new Error(`the host ended with ${code} before it was ready`)))
  })
  return { host, link }
}

const ended = (host: ChildProcess): Promise<void> =>
  new Promise(done => {
    if (host.exitCode !== null || host.signalCode !== null) done()
    else host.on('exit', () => done())
  })

/** `demo` keeps the demonstration jobs that a first start loads; otherwise the catalogue begins empty. */
export async function startApp({ demo = false } = {}): Promise<App> {
  const folder = await mkdtemp(join(tmpdir(), 'plugtray-e2e-'))
  const catalogue = join(folder, 'catalogue')
  if (!demo) {
    // A catalogue that exists already gets no demonstration jobs.
    const opened = await openCatalogue(catalogue, { appVersion: 'test' })
    await opened.photos.close()
    await opened.close()
  }
  let { host, link } = await startHost(catalogue)
  const executablePath = process.env.PLUGTRAY_CHROMIUM ?? '/usr/bin/chromium'
  const browser = await chromium.launch({ executablePath, args: flags })
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true })
  const page = await context.newPage()
  const complaints: string[] = []
  const foreign: string[] = []
  let crashed = false
  page.on('console', message => {
    if (message.type() === 'error' && !crashed) complaints.push(message.text())
  })
  page.on('pageerror', error => complaints.push(error.message))
  // Listening from the start: the browser would otherwise be told to hand over file choosers only after the key was pressed.
  page.on('filechooser', () => {})
  page.on('request', request => {
    const { protocol, host: at } = new URL(request.url())
    if (!['blob:', 'data:'].includes(protocol) && !at.startsWith('127.0.0.1:')) foreign.push(request.url())
  })
  await page.goto(link)
  await page.locator('.shell').waitFor()
  return {
    page,
    browser,
    catalogue,
    complaints,
    foreign,
    async restart(signal = 'SIGKILL') {
      crashed = true
      host.kill(signal)
      await ended(host)
      ;({ host, link } = await startHost(catalogue))
      await page.goto('about:blank')
      await page.goto(link)
      await page.locator('.shell').waitFor()
      crashed = false
    },
    async close() {
      await browser.close()
      host.kill('SIGTERM')
      await ended(host)
      await rm(folder, { recursive: true, force: true })
    },
  }
}

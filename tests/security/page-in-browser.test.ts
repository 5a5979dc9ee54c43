// C1 and H3 in a real Chromium: the page lives within its policy, the policy bites, and a page of another port gets nothing.
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sessionHeader } from '../../shared/contract/routes.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import { type LoopbackHost, openLoopback } from './loopback-host.ts'

type Violation = { directive: string; blocked: string }

let host: LoopbackHost
let browser: Browser
let page: Page
const violations: Violation[] = []

beforeAll(async () => {
  host = await openLoopback()
  browser = await chromium.launch({
    executablePath: process.env.PLUGTRAY_CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--headless=new',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
    ],
  })
  const context = await browser.newContext()
  await context.exposeFunction('tellViolation', (directive: string, blocked: string) => {
    violations.push({ directive, blocked })
  })
  await context.addInitScript(`document.addEventListener('securitypolicyviolation', event =>
    window.tellViolation(event.effectiveDirective, event.blockedURI))`)
  page = await context.newPage()
}, 60_000)
afterAll(async () => {
  await browser.close()
  await host.close()
})

/** Violations that come while `work` runs and shortly after. */
async function violationsOf(work: () => Promise<unknown>): Promise<Violation[]> {
  violations.length = 0
  await work()
  await page.waitForTimeout(300)
  return violations.slice()
}

/** Run by the page itself: what the inspector evaluates may make code out of text. */
const later = (code: string) => `setTimeout(() => { ${code} })`

describe('C1: the page and its policy', () => {
  it('do not meet: pages, dialogs and lists work without one violation', async () => {
    const found = await violationsOf(async () => {
      const layout = layoutById('i4-1342')
      if (!layout) throw new Error('no layout')
      const { job } = await host.services.jobs.create({
        complaint: 'Rough',
        engine: { vehicle: 'Wagon' },
        layout,
      })
      await page.goto(host.link())
      await page.getByText('Wagon').first().waitFor()
      await page.getByRole('button', { name: 'New job' }).first().click()
      await page.getByRole('dialog').waitFor()
      await page.keyboard.press('Escape')
      await page.goto(`${host.origin}/#/jobs/${job.id}`)
      await page.getByText('Rough').first().waitFor()
    })
    expect(found).toEqual([])
    // The two style elements of the widget library are in force: their hashes are those of the policy.
    const touch = await page.evaluate(
      () => document.getElementById('react-aria-pressable-style')?.textContent,
    )
    expect(touch).toContain('touch-action')
  })

  const attacks: [string, string, string[]][] = [
    [
      'an inline script',
      `const script = document.createElement('script'); script.append('window.ran = true');
       document.head.append(script)`,
      ['require-trusted-types-for', 'script-src-elem'],
    ],
    [
      'a script of another origin',
      `const script = document.createElement('script');
       try { script.src = 'http://evil.test/x.js'; document.head.append(script) } catch {}`,
      ['require-trusted-types-for', 'script-src-elem'],
    ],
    [
      'text as code',
      `try { window.ran = Function('return true')() } catch {}`,
      ['require-trusted-types-for', 'script-src'],
    ],
    [
      'text as markup',
      `try { document.body.innerHTML = '<img src=x onerror="window.ran = true">' } catch {}`,
      ['require-trusted-types-for'],
    ],
    [
      'an inline style',
      `document.head.append(Object.assign(document.createElement('style'), { textContent: 'p{}' }))`,
      ['style-src-elem'],
    ],
    ['a picture of another origin', `new Image().src = 'http://evil.test/x.png'`, ['img-src']],
    ['a picture in the address', `new Image().src = 'data:image/png;base64,AAAA'`, ['img-src']],
    ['a request elsewhere', `fetch('http://evil.test/').catch(() => {})`, ['connect-src']],
    [
      'a frame',
      `document.body.append(Object.assign(document.createElement('iframe'), { src: 'http://evil.test/' }))`,
      ['frame-src'],
    ],
    [
      'a form',
      `const form = document.body.appendChild(document.createElement('form')); form.action = '/rpc/demo/load';
       form.method = 'post'; form.submit()`,
      ['form-action'],
    ],
    [
      'a base address',
      `document.head.append(Object.assign(document.createElement('base'), { href: 'http://evil.test/' }))`,
      ['base-uri'],
    ],
  ]
  it.each(attacks)('stops %s', async (_, code, directives) => {
    const found = await violationsOf(() => page.evaluate(later(code)))
    expect(directives).toContain(found[0]?.directive)
    expect(await page.evaluate('window.ran')).toBeUndefined()
  })
})

describe('H3: a page on another port of this machine', () => {
  let other: Server
  beforeAll(async () => {
    other = createServer((_, response) => {
      response.setHeader('content-type', 'text/html')
      response.end('<!doctype html><title>elsewhere</title><body></body>')
    })
    await new Promise<void>(resolve => other.listen(0, '127.0.0.1', resolve))
  })
  afterAll(() => other.close())

  it('reads nothing and changes nothing, whatever it tries', async () => {
    const at = (other.address() as AddressInfo).port
    const context = await browser.newContext()
    const stranger = await context.newPage()
    await stranger.goto(`http://127.0.0.1:${at}/`)
    const before = host.handled.length
    const jobs = host.services.catalogue.list().length
    const results: unknown = await stranger.evaluate(
      async ({ origin, header, token }) => {
        const tried = (work: Promise<unknown>) =>
          work.then(
            value => String(value),
            () => 'failed',
          )
        const element = (name: string, src: string) =>
          new Promise(resolve => {
            const made = document.createElement(name)
            made.addEventListener('load', () => resolve('loaded'))
            made.addEventListener('error', () => resolve('failed'))
            made.setAttribute('src', src)
            document.body.append(made)
          })
        const json = { 'content-type': 'application/json' }
        const post = { method: 'POST', body: '{}' }
        const opened = (target: EventTarget) =>
          new Promise(resolve => {
            target.addEventListener('open', () => resolve('open'))
            target.addEventListener('error', () => resolve('failed'))
          })
        const socket = opened(new WebSocket(origin.replace('http', 'ws')))
        const events = opened(new EventSource(`${origin}/rpc/catalogue/changes`))
        const form = document.createElement('form')
        form.action = `${origin}/rpc/demo/load`
        form.method = 'post'
        form.target = 'inside'
        const frame = document.createElement('iframe')
        frame.name = 'inside'
        document.body.append(frame, form)
        form.submit()
        navigator.sendBeacon(`${origin}/rpc/demo/load`, '{}')
        return {
          read: await tried(fetch(`${origin}/`).then(answer => answer.text())),
          blind: await tried(
            fetch(`${origin}/rpc/demo/load`, { ...post, mode: 'no-cors' }).then(({ type }) => type),
          ),
          // Even with the token it could not send it: the header needs a permission that is never given.
          withToken: await tried(
            fetch(`${origin}/rpc/jobs/list`, { ...post, headers: { ...json, [header]: token } }).then(a =>
              a.text(),
            ),
          ),
          image: await element('img', `${origin}/icon.svg`),
          script: await element('script', `${origin}/assets/index.js`),
          socket: await socket,
          events: await events,
        }
      },
      { origin: host.origin, header: sessionHeader, token: host.token },
    )
    await stranger.waitForTimeout(500)
    expect(results).toEqual({
      read: 'failed',
      blind: 'failed',
      withToken: 'failed',
      image: 'failed',
      script: 'failed',
      socket: 'failed',
      events: 'failed',
    })
    expect(host.handled.slice(before)).toEqual([])
    expect(host.services.catalogue.list()).toHaveLength(jobs)
    await context.close()
  })
})

// H4, H5: the session's token, and the one-time code that brings it to the page.
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { limits } from '../../electron/limits.ts'
import { secret } from '../../electron/session-token.ts'
import { sessionHeader } from '../../shared/contract/routes.ts'
import { type LoopbackHost, openLoopback } from './loopback-host.ts'

let host: LoopbackHost
let now = 1_000_000
beforeEach(async () => {
  host = await openLoopback({ now: () => now })
})
afterEach(() => host.close())

const trade = (code: string) =>
  fetch(`${host.origin}/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code }),
  })
const codeOf = (link: string) => new URL(link).hash.slice('#code='.length)

describe('H4: everything but the page itself needs the token', () => {
  const json = { 'content-type': 'application/json' }
  const routes: [path: string, method: string, headers: Record<string, string>, body: string | null][] = [
    ['/rpc/jobs/list', 'POST', json, '{}'],
    ['/rpc/nothing/here', 'POST', json, '{}'],
    ['/upload', 'POST', { 'content-type': 'application/octet-stream' }, 'x'],
    [`/photo/${'0'.repeat(64)}/thumb`, 'GET', {}, null],
    ['/export/anything', 'GET', {}, null],
  ]
  const wrong: [string, (token: string) => string | undefined][] = [
    ['without', () => undefined],
    ['empty', () => ''],
    ['of another run', () => secret()],
    ['cut short', token => token.slice(0, -1)],
    ['too long', token => `${token}A`],
    ['in other letters', token => token.toLowerCase()],
  ]
  it.each(routes)('401 on %s', async (path, method, headers, body) => {
    const statuses = await Promise.all(
      wrong.map(async ([name, make]) => {
        const given = make(host.token)
        const answer = await fetch(`${host.origin}${path}`, {
          method,
          headers: { ...headers, ...(given === undefined ? {} : { [sessionHeader]: given }) },
          body,
        })
        return [name, answer.status, (await answer.text()).includes(host.token)]
      }),
    )
    expect(statuses).toEqual(wrong.map(([name]) => [name, 401, false]))
  })
  it('takes no cookie and no query in its place, and sets none', async () => {
    for (const [path, headers] of [
      ['/rpc/jobs/list', { cookie: `${sessionHeader}=${host.token}` }],
      [`/rpc/jobs/list?${sessionHeader}=${host.token}`, {}],
    ] as const) {
      const answer = await fetch(`${host.origin}${path}`, {
        method: 'POST',
        headers: { ...headers, 'content-type': 'application/json' },
        body: '{}',
      })
      expect(answer.status).toBe(401)
      expect(answer.headers.get('set-cookie')).toBeNull()
    }
  })
  it('has 256 bits, others at every start', () => {
    expect(Buffer.from(host.token, 'base64url')).toHaveLength(32)
    expect(new Set(Array.from({ length: 100 }, secret)).size).toBe(100)
  })
})

describe('H5: the code of the link', () => {
  it('stands in the fragment, which no browser sends', () => {
    const link = new URL(host.link())
    expect([link.pathname, link.search]).toEqual(['/', ''])
    expect(link.hash).toMatch(/^#code=[A-Za-z0-9_-]{43}$/)
  })
  it('gives the token once', async () => {
    const code = codeOf(host.link())
    const first = await trade(code)
    expect(await first.json()).toEqual({ token: host.token })
    expect(first.headers.get('cache-control')).toBe('no-store')
    expect((await trade(code)).status).toBe(401)
  })
  it('gives it once to two who come together', async () => {
    const code = codeOf(host.link())
    const answers = await Promise.all([trade(code), trade(code)])
    expect(answers.map(({ status }) => status).toSorted((a, b) => a - b)).toEqual([200, 401])
  })
  it('is good for a minute and not a moment longer', async () => {
    const code = codeOf(host.link())
    now += limits.codeMs - 1
    expect((await trade(code)).status).toBe(200)
    const late = codeOf(host.link())
    now += limits.codeMs
    expect((await trade(late)).status).toBe(401)
  })
  it('is no other text, and nothing is told of it', async () => {
    host.link()
    for (const code of ['', 'x', secret(), host.token]) expect((await trade(code)).status).toBe(401)
    for (const body of ['', '[]', '{"code":1}', '{"code":"x","more":1}', 'x'.repeat(2000)]) {
      const answer = await fetch(`${host.origin}/session`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      })
      expect([400, 413]).toContain(answer.status)
    }
    expect((await fetch(`${host.origin}/session`)).status).toBe(405)
    const plain = await fetch(`${host.origin}/session`, { method: 'POST', body: '{}' })
    expect(plain.status).toBe(415)
  })
})

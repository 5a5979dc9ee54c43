// H1, H2, H3, H11: who may reach the loopback host at all, looked at on the wire.
import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sessionHeader } from '../../shared/contract/routes.ts'
import { type LoopbackHost, openLoopback, raw, statusOf } from './loopback-host.ts'

let host: LoopbackHost
beforeAll(async () => {
  host = await openLoopback()
})
afterAll(() => host.close())

/** A request for the job list, right in everything but what is given. */
const ask = (lines: string[], { first = 'POST /rpc/jobs/list HTTP/1.1', body = '{}' } = {}) =>
  raw(
    host.port,
    [
      first,
      ...lines,
      `${sessionHeader}: ${host.token}`,
      'content-type: application/json',
      `content-length: ${body.length}`,
      'connection: close',
      '',
      body,
    ].join('\r\n'),
  )
const right = () => `host: ${host.address}`

it('answers a request that is right in everything (the cases below change one thing of it)', async () => {
  expect(statusOf(await ask([right()]))).toBe(200)
})

describe('H1: bound to 127.0.0.1 alone', () => {
  const others = Object.values(networkInterfaces()).flatMap(all =>
    (all ?? [])
      .filter(({ address }) => address !== '127.0.0.1')
      .map(({ address, scopeid }) => {
        return scopeid ? `${address}%${scopeid}` : address
      }),
  )
  it.each([...others, '127.0.0.2'])('no connection through %s', async address => {
    const connected = await new Promise<boolean>(resolve => {
      const socket = connect({ port: host.port, host: address, timeout: 2000 })
      socket.on('connect', () => resolve(true))
      for (const event of ['error', 'timeout']) socket.on(event, () => resolve(false))
      socket.on('close', () => resolve(false))
    })
    expect(connected).toBe(false)
  })
})

describe('H2: only under its own address, before anything is read', () => {
  const cases: [string, () => string[], string?][] = [
    ['a foreign name', () => [`host: evil.test:${host.port}`]],
    ['a name that resolves here', () => [`host: localhost:${host.port}`]],
    ['a trailing dot', () => [`host: 127.0.0.1.:${host.port}`]],
    ['another port', () => [`host: 127.0.0.1:${host.port + 1}`]],
    ['no port', () => ['host: 127.0.0.1']],
    ['a user in front', () => [`host: x@${host.address}`]],
    ['an empty host', () => ['host:']],
    ['an absolute target', () => [right()], `POST http://127.0.0.1/rpc/jobs/list HTTP/1.1`],
    ['an absolute foreign target', () => [right()], 'POST http://evil.test/rpc/jobs/list HTTP/1.1'],
    ['a star', () => [right()], 'OPTIONS * HTTP/1.1'],
  ]
  it.each(cases)('421 for %s', async (_, lines, first) => {
    const before = host.handled.length
    const answer = await ask(lines(), first === undefined ? {} : { first })
    expect(statusOf(answer)).toBe(421)
    expect(answer).toContain(`http://${host.address}/`)
    expect(host.handled.length).toBe(before)
  })
  it.each([
    ['a missing host', () => []],
    ['a doubled host', () => [right(), right()]],
  ])('refuses %s', async (_, lines: () => string[]) => {
    const before = host.handled.length
    expect([400, 421]).toContain(statusOf(await ask(lines())))
    expect(host.handled.length).toBe(before)
  })
})

describe('H3: only from its own page', () => {
  it.each([
    ['a foreign origin', () => ['origin: http://evil.test']],
    ['another port of this machine', () => [`origin: http://127.0.0.1:${host.port + 1}`]],
    ['an opaque origin', () => ['origin: null']],
    ['the right origin over TLS', () => [`origin: https://${host.address}`]],
    ['a request of another site', () => ['sec-fetch-site: cross-site']],
    ['a request of the same site', () => ['sec-fetch-site: same-site']],
    ['a call that a person typed', () => ['sec-fetch-site: none']],
  ])('403 for %s', async (_, lines: () => string[]) => {
    const before = host.handled.length
    const answer = await ask([right(), ...lines()])
    expect(statusOf(answer)).toBe(403)
    expect(host.handled.length).toBe(before)
  })
  it('200 for its own', async () => {
    const answer = await ask([right(), `origin: ${host.origin}`, 'sec-fetch-site: same-origin'])
    expect(statusOf(answer)).toBe(200)
  })
  it('lets a person open the page, and nothing else, from outside the browser', async () => {
    const open = (path: string) =>
      ask([right(), 'sec-fetch-site: none'], { first: `GET ${path} HTTP/1.1`, body: '' })
    expect(statusOf(await open('/'))).toBe(200)
    expect(statusOf(await open(`/photo/${'0'.repeat(64)}/thumb`))).toBe(403)
  })
  it('answers no preflight and never allows another origin', async () => {
    const answer = await ask([right(), `origin: ${host.origin}`, 'access-control-request-method: POST'], {
      first: 'OPTIONS /rpc/jobs/list HTTP/1.1',
      body: '',
    })
    expect(statusOf(answer)).toBe(405)
    for (const text of [answer, await ask([right()])])
      expect(text.toLowerCase()).not.toContain('access-control-allow')
  })
})

describe('H11: nothing but plain HTTP/1.1', () => {
  it.each([
    ['both lengths', ['transfer-encoding: chunked']],
    ['two lengths', ['content-length: 0']],
    ['an unknown encoding', ['transfer-encoding: gzip']],
    ['a folded header', ['x-a: 1', ' continued']],
    ['a header without a colon', ['nonsense']],
    ['a space before the colon', ['x-a : 1']],
  ])('400 for %s', async (_, lines) => {
    const before = host.handled.length
    expect(statusOf(await ask([right(), ...lines]))).toBe(400)
    expect(host.handled.length).toBe(before)
  })
  it.each(['TRACE', 'PUT', 'DELETE', 'PATCH', 'HEAD', 'PROPFIND'])('405 for %s', async method => {
    expect(statusOf(await ask([right()], { first: `${method} / HTTP/1.1`, body: '' }))).toBe(405)
  })
  it('ends a request to change the protocol', async () => {
    const answer = await ask([right(), 'upgrade: websocket', 'connection: upgrade'], {
      first: 'GET / HTTP/1.1',
      body: '',
    })
    expect(answer).not.toContain('101')
  })
  it('ends a request for a tunnel', async () => {
    expect(await raw(host.port, `CONNECT evil.test:443 HTTP/1.1\r\n${right()}\r\n\r\n`)).toBe('')
  })
  it('does not take what follows a body for a second request of another', async () => {
    const smuggled = 'POST /rpc/demo/load HTTP/1.1\r\n\r\n'
    const before = host.handled.length
    await ask([right()], { body: `{}${smuggled}` })
    expect(host.handled.slice(before)).toEqual(['POST /rpc/jobs/list'])
  })
})

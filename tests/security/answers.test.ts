// C2, H10, P1, P2, S9: what goes out: headers on every route, nothing of this computer in an error, only our own files.
import { homedir } from 'node:os'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { contentPolicy } from '../../electron/security-headers.ts'
import { withoutPrivateText } from '../../electron/services/log.ts'
import { fileNameHeader, sessionHeader } from '../../shared/contract/routes.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import { jpegBytes } from '../fixtures/images/pictures.ts'
import { asPage, type LoopbackHost, openLoopback, raw, statusOf } from './loopback-host.ts'

let host: LoopbackHost
let sha256 = ''
let exportId = ''
beforeAll(async () => {
  host = await openLoopback()
  const layout = layoutById('i4-1342')
  if (!layout) throw new Error('no layout')
  const { job } = await host.services.jobs.create({ complaint: 'x', engine: { vehicle: 'y' }, layout })
  const bytes = await jpegBytes(7)
  const answer = await ask('/upload', {
    method: 'POST',
    headers: {
      [sessionHeader]: host.token,
      'content-type': 'application/octet-stream',
      [fileNameHeader]: 'a',
    },
    body: Uint8Array.from(bytes),
  })
  const { ref }: { ref: string } = await answer.json()
  const trayId = job.trays[0]?.id ?? ''
  const task = await host.services.startIntake({ jobId: job.id, trayId, refs: [ref] })
  for await (const event of host.services.tasks.watch(task))
    if (event.kind === 'failed') throw new Error('failed')
  sha256 = (await host.services.jobs.get(job.id)).job.trays[0]?.unsorted[0]?.photo ?? ''
  exportId = (await host.services.writeUpPdf(job.id, 'shop')).exportId
})
afterAll(() => host.close())

const ask = (path: string, init: RequestInit = {}) => fetch(`${host.origin}${path}`, init)
const operation = (path: string, body = '{}') => ask(path, { method: 'POST', headers: asPage(host), body })
const get = (path: string) => ask(path, { headers: asPage(host) })

describe('C2: the same headers on every answer', () => {
  const routes: [string, () => Promise<Response>, number, 'no-store' | 'private'][] = [
    ['the page', () => ask('/'), 200, 'no-store'],
    ['a page that is not there', () => ask('/nothing.js'), 404, 'no-store'],
    ['an operation', () => operation('/rpc/jobs/list'), 200, 'no-store'],
    ['a stream', () => operation('/rpc/tasks/watch', '{"json":{"taskId":"x"}}'), 404, 'no-store'],
    ['bad input', () => operation('/rpc/jobs/get'), 400, 'no-store'],
    ['no such operation', () => operation('/rpc/jobs/nothing'), 404, 'no-store'],
    ['an unknown session', () => ask('/rpc/jobs/list', { method: 'POST' }), 401, 'no-store'],
    ['a code', () => ask('/session', { method: 'POST' }), 415, 'no-store'],
    ['a wrong method', () => ask('/', { method: 'PUT' }), 405, 'no-store'],
    ['a foreign origin', () => ask('/', { headers: { origin: 'http://evil.test' } }), 403, 'no-store'],
    ['a photo', () => get(`/photo/${sha256}/thumb`), 200, 'private'],
    ['no photo', () => get(`/photo/${'0'.repeat(64)}/thumb`), 404, 'no-store'],
    ['a report', () => get(`/export/${exportId}`), 200, 'no-store'],
  ]
  it.each(routes)('%s', async (_, request, status, cache) => {
    const answer = await request()
    expect(answer.status).toBe(status)
    const { headers } = answer
    expect(headers.get('x-content-type-options')).toBe('nosniff')
    expect(headers.get('referrer-policy')).toBe('no-referrer')
    expect(headers.get('cross-origin-opener-policy')).toBe('same-origin')
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin')
    expect(headers.get('permissions-policy')).toMatch(/^camera=\(\), microphone=\(\)/)
    expect(headers.get('cache-control')?.split(',')[0]).toBe(cache)
    expect([contentPolicy, 'sandbox']).toContain(headers.get('content-security-policy'))
    expect(headers.get('access-control-allow-origin')).toBeNull()
    expect(headers.get('set-cookie')).toBeNull()
    await answer.arrayBuffer()
  })
  it('C1: the policy allows nothing inline and nothing from elsewhere', () => {
    expect(contentPolicy).not.toMatch(/unsafe|data:|https?:|\*/)
    for (const directive of ["default-src 'none'", "script-src 'self'", "frame-ancestors 'none'"])
      expect(contentPolicy.split('; ')).toContain(directive)
  })
})

describe('P1: only the files of the page, by their exact names', () => {
  it.each([
    '/../package.json',
    '/assets/../index.html',
    '/%2e%2e/package.json',
    '/..%2fpackage.json',
    '/index.html%00.js',
    '/assets\\index.html',
    '//index.html',
    '/./index.html',
    '/INDEX.HTML',
    '/index.html/',
    '/assets',
    '/assets/',
    '/package.json',
    '/out/main/main.js',
    '/@fs/etc/passwd',
    '/photo',
    '/rpc',
  ])('404 for %s', async path => {
    const answer = await raw(
      host.port,
      `GET ${path} HTTP/1.1\r\nhost: ${host.address}\r\nconnection: close\r\n\r\n`,
    )
    expect(statusOf(answer)).toBe(404)
  })
  it('has the page', async () => {
    expect(await (await ask('/')).text()).toContain('<div id="root">')
  })
})

describe('P2: photos by hash and kind alone', () => {
  it('gives the picture, of the type it was made as, in a sandbox', async () => {
    const answer = await get(`/photo/${sha256}/thumb`)
    expect(answer.headers.get('content-type')).toBe('image/jpeg')
    expect(answer.headers.get('content-security-policy')).toBe('sandbox')
    expect(answer.headers.get('vary')).toBe(sessionHeader)
  })
  it.each([
    ['an unknown hash', () => `/photo/${'0'.repeat(64)}/thumb`],
    ['a hash in capitals', () => `/photo/${sha256.toUpperCase()}/thumb`],
    ['a short hash', () => `/photo/${sha256.slice(1)}/thumb`],
    ['a long hash', () => `/photo/${sha256}0/thumb`],
    ['an unknown kind', () => `/photo/${sha256}/original`],
    ['a kind of every object', () => `/photo/${sha256}/constructor`],
    ['no kind', () => `/photo/${sha256}/`],
    ['more behind the kind', () => `/photo/${sha256}/thumb/x`],
    ['a file name', () => `/photo/${sha256.slice(0, 2)}/${sha256}.jpg`],
    ['a way up', () => `/photo/..%2f..%2fsettings.json/thumb`],
  ])('404 for %s', async (_, path) => {
    expect((await get(path())).status).toBe(404)
  })
  it('405 for anything but GET', async () => {
    expect((await operation(`/photo/${sha256}/thumb`)).status).toBe(405)
    expect((await operation(`/export/${exportId}`)).status).toBe(405)
  })
})

describe('H10: an error tells no stack and no place on this computer', () => {
  const errors: [string, () => Promise<Response>][] = [
    ['an unknown job', () => operation('/rpc/jobs/get', '{"json":{"id":"nobody"}}')],
    ['bad input', () => operation('/rpc/jobs/create', '{"json":{"complaint":1}}')],
    ['broken JSON', () => operation('/rpc/jobs/get', '{')],
    ['an unknown photo', () => get(`/photo/${'0'.repeat(64)}/full`)],
    ['a job that cannot be restored', () => operation('/rpc/jobs/restore', '{"json":{"id":"nobody"}}')],
    ['a fault nobody expected', () => operation('/rpc/catalogue/status')],
  ]
  it.each(errors)('%s', async (name, request) => {
    const { status } = host.services
    if (name === 'a fault nobody expected')
      host.services.status = () => {
        throw new TypeError(`cannot read ${host.services.catalogue.folder}/jobs of A. Customer`)
      }
    const text = await (await request()).text()
    host.services.status = status
    expect(text).toMatch(/"code":"[A-Z_]+"/)
    expect(text).toMatch(/"what":"[^"]+"/)
    for (const secretText of [
      homedir(),
      host.services.catalogue.folder,
      process.cwd(),
      'node_modules',
      'A. Cust',
    ])
      expect(text).not.toContain(secretText)
    expect(text).not.toMatch(/\bat .+:\d+:\d+|\.ts\b|\.js\b/)
  })
  it('INTERNAL names the entry under which the log has it', async () => {
    const { status } = host.services
    host.services.status = () => {
      throw new TypeError('nobody expected this')
    }
    const text = await (await operation('/rpc/catalogue/status')).text()
    host.services.status = status
    expect(text).toMatch(/"code":"INTERNAL".*log entry [0-9a-f]{8}/)
    expect(host.logged.at(-1)).toBeInstanceOf(TypeError)
  })
})

describe('S9: the log holds no text of a customer', () => {
  it('keeps the kind of error and the lines of code, no message and no folder', () => {
    const error = new TypeError('cannot read /home/somebody/Plugtray/A. Customer.jpg', {
      cause: Object.assign(new Error('open /home/somebody/x'), { code: 'ENOENT' }),
    })
    const text = withoutPrivateText(error)
    expect(text).toMatch(/^TypeError .*answers\.test\.ts:\d+:\d+/)
    expect(text).toContain('from Error ENOENT')
    expect(text).not.toMatch(/somebody|Customer|home|\/work|[\\/]/)
  })
})

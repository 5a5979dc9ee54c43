// H6, H7, H9: what a request may bring, each limit at its border.
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { limits } from '../../electron/limits.ts'
import { createWaitingFiles, type Space } from '../../electron/services/waiting-files.ts'
import { realDisk } from '../../electron/services/store/disk.ts'
import { fileNameHeader, sessionHeader } from '../../shared/contract/routes.ts'
import { asPage, type LoopbackHost, openLoopback, raw, statusOf } from './loopback-host.ts'

let host: LoopbackHost
beforeAll(async () => {
  host = await openLoopback()
})
afterAll(() => host.close())

const post = (path: string, headers: Record<string, string>, body: BodyInit) => {
  const init: RequestInit & { duplex: 'half' } = {
    method: 'POST',
    headers: { [sessionHeader]: host.token, ...headers },
    body,
    duplex: 'half',
  }
  return fetch(`${host.origin}${path}`, init)
}

const octets = { 'content-type': 'application/octet-stream', [fileNameHeader]: 'plug.jpg' }

/** A body without an announced length. */
const streamOf = (bytes: number, chunk = 1024 * 1024): ReadableStream<Uint8Array> => {
  let left = bytes
  return new ReadableStream({
    pull(controller) {
      const next = Math.min(left, chunk)
      if (next > 0) controller.enqueue(new Uint8Array(next).fill(32))
      left -= next
      if (left === 0) controller.close()
    },
  })
}

describe('H6: only POST, only the two types of content', () => {
  it.each([
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/json; charset=utf-8',
    'text/json',
    '',
  ])('415 on an operation sent as "%s"', async type => {
    expect((await post('/rpc/jobs/list', { 'content-type': type }, '{}')).status).toBe(415)
  })
  it.each(['text/plain', 'image/jpeg', 'application/json', ''])('415 on a photo sent as "%s"', async type => {
    expect((await post('/upload', { ...octets, 'content-type': type }, 'x')).status).toBe(415)
  })
  it('405 on GET of an operation or of the upload', async () => {
    for (const path of ['/rpc/jobs/list', '/rpc/demo/load?data={}', '/upload'])
      expect((await fetch(`${host.origin}${path}`, { headers: asPage(host) })).status).toBe(405)
  })
  it('400 on an upload without a name, or with one that is not percent-encoded', async () => {
    for (const name of ['', '%', '%FF', 'a'.repeat(1025)])
      expect((await post('/upload', { ...octets, [fileNameHeader]: name }, 'x')).status).toBe(400)
  })
  it('keeps a name with what a path is made of as a name', async () => {
    const name = encodeURIComponent('../../etc/passwd\u0000')
    expect((await post('/upload', { ...octets, [fileNameHeader]: name }, 'x')).status).toBe(200)
    expect(await host.incoming()).toEqual([expect.stringMatching(/^[0-9a-f-]{36}$/)])
  })
})

describe('H7: sizes, counted while they arrive', () => {
  /** JSON of exactly so many bytes: an operation with a field that the contract does not know. */
  const jsonOf = (bytes: number) => `{"json":{"x":"${'a'.repeat(bytes - '{"json":{"x":""}}'.length)}"}}`
  const codeOf = async (answer: Response) => {
    const body: unknown = await answer.json()
    return JSON.stringify(body).match(/"code":"([A-Z_]+)"/)?.[1]
  }
  it.each([
    ['one byte less than', -1, 400, 'BAD_INPUT'],
    ['exactly', 0, 400, 'BAD_INPUT'],
    ['one byte more than', 1, 413, 'TOO_LARGE'],
  ])('JSON of %s 1 MiB', async (_, more, status, code) => {
    const answer = await post('/rpc/jobs/get', asPage(host), jsonOf(limits.jsonBytes + more))
    expect([answer.status, await codeOf(answer)]).toEqual([status, code])
  })
  it('JSON without an announced length', async () => {
    const answer = await post('/rpc/jobs/get', asPage(host), streamOf(limits.jsonBytes + 1))
    expect([answer.status, await codeOf(answer)]).toEqual([413, 'TOO_LARGE'])
  })
  it.each([
    ['one byte less than', -1, 200],
    ['exactly', 0, 200],
    ['one byte more than', 1, 413],
  ])('a photo of %s 64 MiB', async (_, more, status) => {
    const before = (await host.incoming()).length
    const answer = await post('/upload', octets, streamOf(limits.photoBytes + more))
    expect(answer.status).toBe(status)
    expect((await host.incoming()).length).toBe(before + (status === 200 ? 1 : 0))
  })
  it('a photo that is longer than announced is refused, and nothing of it stays', async () => {
    const before = await host.incoming()
    const lines = Object.entries({ ...octets, [sessionHeader]: host.token }).map(pair => pair.join(': '))
    const head = ['POST /upload HTTP/1.1', `host: ${host.address}`, ...lines, 'content-length: 3', '', '']
    expect(statusOf(await raw(host.port, `${head.join('\r\n')}abcdef`))).toBe(400)
    // Its temporary file may only come and go after the answer.
    await new Promise(resolve => setTimeout(resolve, 300))
    await expect.poll(host.incoming).toEqual(before)
  })
  it('a photo that breaks off leaves nothing', async () => {
    const before = await host.incoming()
    const lines = Object.entries({ ...octets, [sessionHeader]: host.token }).map(pair => pair.join(': '))
    const head = [
      'POST /upload HTTP/1.1',
      `host: ${host.address}`,
      ...lines,
      'content-length: 100000',
      '',
      '',
    ]
    await raw(host.port, `${head.join('\r\n')}abc`, 300)
    await expect.poll(host.incoming).toEqual(before)
  })
  it('four uploads at once, not five', async () => {
    const held = Array.from({ length: limits.uploadsAtOnce }, () => {
      let end = () => {}
      const body = new ReadableStream<Uint8Array>({
        start(controller) {
          controller.enqueue(new Uint8Array(16))
          end = () => controller.close()
        },
      })
      return { answer: post('/upload', octets, body), end: () => end() }
    })
    const before = host.handled.length
    await expect.poll(() => host.handled.length).toBeGreaterThanOrEqual(before)
    await new Promise(resolve => setTimeout(resolve, 200))
    const fifth = await post('/upload', octets, 'x')
    expect([fifth.status, await codeOf(fifth)]).toEqual([409, 'REFUSED'])
    for (const { end } of held) end()
    for (const { answer } of held) expect((await answer).status).toBe(200)
    expect((await post('/upload', octets, 'x')).status).toBe(200)
  })
  it.each([
    ['just under', -1, 200],
    ['over', 1, 431],
  ])('headers %s 16 KiB', async (_, more, status) => {
    const lines = [
      `host: ${host.address}`,
      `${sessionHeader}: ${host.token}`,
      'content-type: application/json',
    ]
    const head = ['POST /rpc/jobs/list HTTP/1.1', ...lines, 'content-length: 2', 'connection: close', 'x: ']
    const used = head.join('\r\n').length + '\r\n\r\n'.length
    // Node counts names and values, not every separator: a margin of 200 bytes on either side.
    const fill = 'a'.repeat(16 * 1024 - used + more * 200)
    expect(statusOf(await raw(host.port, `${head.join('\r\n')}${fill}\r\n\r\n{}`))).toBe(status)
  })
})

describe('H7: what is inside JSON', () => {
  it.each([
    ['broken', '{"json":'],
    ['not UTF-8', Uint8Array.from([0x22, 0xff, 0x22])],
    ['a list', '[]'],
    ['an unknown field', '{"json":{},"more":1}'],
    ['places of dates and sets', '{"json":{"id":"x"},"meta":[[1,"id"]]}'],
    ['a way into the prototype', '{"json":{"id":"x"},"meta":[[1,"__proto__","polluted"]]}'],
    ['nesting without end', `{"json":${'['.repeat(200_000)}${']'.repeat(200_000)}}`],
  ])('BAD_INPUT for %s', async (_, body: BodyInit) => {
    const answer = await post('/rpc/jobs/get', asPage(host), body)
    expect(answer.status).toBe(400)
    expect(await answer.text()).toContain('BAD_INPUT')
    expect(Reflect.get({}, 'polluted')).toBeUndefined()
  })
  it('BAD_INPUT for a prototype among the fields', async () => {
    const body =
      '{"json":{"id":"x","__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}}'
    const answer = await post('/rpc/jobs/get', asPage(host), body)
    expect(answer.status).toBe(400)
    expect(Reflect.get({}, 'polluted')).toBeUndefined()
  })
})

describe('H9: an upload leaves room on the disk', () => {
  const receive = async (space: Space) => {
    const files = createWaitingFiles(
      { folder: host.services.catalogue.folder, readOnly: null },
      realDisk,
      () => Promise.resolve(space),
    )
    async function* body() {
      yield new Uint8Array(1)
    }
    return files.receive('plug.jpg', body()).then(
      () => 'received',
      (error: unknown) => (error instanceof Error && 'code' in error ? error.code : error),
    )
  }
  const GiB = 1024 ** 3
  it.each([
    ['a large disk with exactly enough', { total: 1000 * GiB, free: GiB + limits.photoBytes }, 'received'],
    ['a large disk with a byte less', { total: 1000 * GiB, free: GiB + limits.photoBytes - 1 }, 'DISK'],
    [
      'a small disk with exactly enough',
      { total: 10 * GiB, free: 0.5 * GiB + limits.photoBytes },
      'received',
    ],
    ['a small disk with a byte less', { total: 10 * GiB, free: 0.5 * GiB + limits.photoBytes - 1 }, 'DISK'],
    ['a full disk', { total: 10 * GiB, free: 0 }, 'DISK'],
  ])('%s', async (_, space, outcome) => {
    expect(await receive(space)).toBe(outcome)
  })
})

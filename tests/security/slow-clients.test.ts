// H8: clients that hold connections by doing next to nothing do not keep the person's own page out.
import { connect, type Socket } from 'node:net'
import { afterEach, describe, expect, it } from 'vitest'
import { limits } from '../../electron/limits.ts'
import { fileNameHeader, sessionHeader } from '../../shared/contract/routes.ts'
import { asPage, type LoopbackHost, openLoopback } from './loopback-host.ts'

let host: LoopbackHost
const sockets: Socket[] = []
afterEach(async () => {
  for (const socket of sockets.splice(0)) socket.destroy()
  await host.close()
})

/** Opens a connection that sends the text a byte at a time. */
function dribble(text: string, everyMs: number): { socket: Socket; closedAfter: Promise<number> } {
  const since = Date.now()
  const socket = connect(host.port, '127.0.0.1')
  sockets.push(socket)
  socket.on('error', () => undefined)
  let at = 0
  const timer = setInterval(() => socket.write(text[at++ % text.length] ?? ''), everyMs)
  const closedAfter = new Promise<number>(resolve => {
    socket.on('close', () => {
      clearInterval(timer)
      resolve(Date.now() - since)
    })
  })
  return { socket, closedAfter }
}

const normalRequest = async (): Promise<number> => {
  const since = performance.now()
  const answer = await fetch(`${host.origin}/rpc/jobs/list`, {
    method: 'POST',
    headers: { ...asPage(host), connection: 'close' },
    body: '{}',
  })
  await answer.json()
  expect(answer.status).toBe(200)
  return performance.now() - since
}

const uploadHead = () =>
  [
    'POST /upload HTTP/1.1',
    `host: ${host.address}`,
    `${sessionHeader}: ${host.token}`,
    `${fileNameHeader}: a.jpg`,
    'content-type: application/octet-stream',
    'content-length: 1000000',
    '',
    '',
  ].join('\r\n')

describe('a hundred connections that send a byte a second', () => {
  it('are dropped, and a request meanwhile is answered in under half a second', async () => {
    host = await openLoopback()
    const slow = Array.from({ length: 100 }, () =>
      dribble(`GET / HTTP/1.1\r\nhost: ${host.address}\r\nx-padding: ${'a'.repeat(100)}`, 1000),
    )
    const times: number[] = []
    for (let second = 0; second < 12; second += 1) {
      times.push(await normalRequest())
      await new Promise(resolve => setTimeout(resolve, 1000))
    }
    expect(Math.max(...times)).toBeLessThan(500)
    const closed = await Promise.all(slow.map(({ closedAfter }) => closedAfter))
    // The header's time, the second in which it is looked at, and some for a busy machine.
    expect(Math.max(...closed)).toBeLessThan(limits.headerMs + 4000)
  })
})

describe('more connections than there may be', () => {
  it('drop the oldest stranger, never one that knows the session', async () => {
    host = await openLoopback({ connections: { most: 4, slowestBytes: 1000, slowWindowMs: 60_000 } })
    const stop = new AbortController()
    const stream = await fetch(`${host.origin}/rpc/catalogue/changes`, {
      method: 'POST',
      headers: asPage(host),
      body: '{}',
      signal: stop.signal,
    })
    const strangers = [1, 2, 3].map(() => dribble('GET / HTTP/1.1\r\n', 60_000))
    await Promise.all(strangers.map(({ socket }) => new Promise(resolve => socket.once('connect', resolve))))
    await normalRequest()
    await strangers[0]?.closedAfter
    expect(strangers.map(({ socket }) => socket.closed)).toEqual([true, false, false])
    const reader = stream.body?.getReader()
    const read = reader?.read()
    await host.services.setSettings(host.services.catalogue.settings.get())
    expect(new TextDecoder().decode((await read)?.value)).not.toBe('')
    stop.abort()
  })
  it('are closed at once where everybody knows the session', async () => {
    host = await openLoopback({ connections: { most: 2, slowestBytes: 1000, slowWindowMs: 60_000 } })
    const stop = new AbortController()
    const streams = [1, 2].map(() =>
      fetch(`${host.origin}/rpc/catalogue/changes`, {
        method: 'POST',
        headers: asPage(host),
        body: '{}',
        signal: stop.signal,
      }),
    )
    await Promise.all(streams)
    const { closedAfter } = dribble('GET / HTTP/1.1\r\n', 60_000)
    expect(await closedAfter).toBeLessThan(1000)
    stop.abort()
  })
})

describe('a body that hardly arrives', () => {
  it('is given up after one window, at the limits in force', async () => {
    host = await openLoopback()
    const { socket, closedAfter } = dribble('a', 100)
    socket.write(uploadHead())
    expect(await closedAfter).toBeLessThan(limits.slowWindowMs + 3000)
    await expect.poll(host.incoming).toEqual([])
  })
  it.each([
    ['under the limit is given up', 25, true],
    ['over it is not', 5, false],
  ])('%s', async (_, everyMs, dropped) => {
    // At least 80 bytes in each second; a timer on a busy machine may run at half its pace, not at a third.
    host = await openLoopback({ connections: { most: 64, slowestBytes: 80, slowWindowMs: 1000 } })
    const { socket } = dribble('a', everyMs)
    socket.write(uploadHead())
    await new Promise(resolve => setTimeout(resolve, 2600))
    expect(socket.closed).toBe(dropped)
  })
})

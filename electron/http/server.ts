// The loopback server: node:http in front of the fetch handler, bound to 127.0.0.1 and nothing else.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { z } from 'zod'
import type { FetchHandler } from '../handler.ts'
import { limits } from '../limits.ts'
import { securityHeaders } from '../security-headers.ts'
import { createOneTimeCodes } from './one-time-code.ts'
import { refuseRequest } from './request-checks.ts'

export type LoopbackServer = {
  /** "127.0.0.1:<port>" */
  address: string
  /** A link that works once, within a minute. */
  link: () => string
  close: () => Promise<void>
}

export type ServerOptions = { handler: FetchHandler; token: string; port: number; now?: () => number }

const sessionBody = z.strictObject({ code: z.string().max(100) })

export async function startServer({ handler, token, port, now }: ServerOptions): Promise<LoopbackServer> {
  const codes = createOneTimeCodes(now)
  let address = ''

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const refusal = refuseRequest(request, address)
    if (refusal) {
      // The body is not read: the connection ends with the answer.
      say(response, refusal.status, refusal.text, { connection: 'close' })
      return
    }
    if (request.url === '/session') return tradeCode(request, response)
    const stop = new AbortController()
    response.on('close', () => stop.abort())
    await send(response, await handler(toRequest(request, address, stop.signal)))
  }

  const tradeCode = async (request: IncomingMessage, response: ServerResponse) => {
    if (request.method !== 'POST' || request.headers['content-type'] !== 'application/json')
      return say(
        response,
        request.method === 'POST' ? 415 : 405,
        'Send the code as application/json by POST.',
      )
    let text = ''
    for await (const chunk of request) {
      text += String(chunk)
      if (text.length > 1000) return say(response, 413, 'Too long.', { connection: 'close' })
    }
    const body = sessionBody.safeParse(parsed(text))
    if (!body.success || !codes.redeem(body.data.code))
      return say(response, 401, 'This link was used already or is too old. Open the app again.')
    response.writeHead(200, {
      ...securityHeaders,
      'content-type': 'application/json',
      'cache-control': 'no-store',
    })
    response.end(JSON.stringify({ token }))
  }

  const server = createServer({
    headersTimeout: limits.headerMs,
    // Streams of progress stay open on the answering side; this bounds how long a request may take to arrive.
    requestTimeout: limits.requestMs,
    connectionsCheckingInterval: 1000,
    keepAliveTimeout: 5000,
    insecureHTTPParser: false,
  })
  server.maxConnections = limits.connections
  server.on('request', (request, response) => {
    answer(request, response).catch(() => response.destroy())
  })
  server.on('upgrade', (_, socket) => socket.destroy())
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen({ host: '127.0.0.1', port, exclusive: true }, resolve)
  })
  address = `127.0.0.1:${portOf(server)}`
  return {
    address,
    link: () => `http://${address}/#code=${codes.issue()}`,
    close: () =>
      new Promise(resolve => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

const portOf = (server: Server): number => {
  const at: AddressInfo | string | null = server.address()
  return at !== null && typeof at === 'object' ? at.port : 0
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function say(
  response: ServerResponse,
  status: number,
  text: string,
  headers: Record<string, string> = {},
): void {
  response.writeHead(status, {
    ...securityHeaders,
    'content-type': 'text/plain; charset=utf-8',
    'cache-control': 'no-store',
    ...headers,
  })
  response.end(text)
}

function toRequest(request: IncomingMessage, address: string, signal: AbortSignal): Request {
  const headers = new Headers()
  for (const [name, value] of Object.entries(request.headers))
    if (value !== undefined) headers.set(name, Array.isArray(value) ? value.join(', ') : value)
  const method = request.method ?? 'GET'
  const init: RequestInit & { duplex?: 'half' } = { method, headers, signal }
  if (method !== 'GET' && method !== 'HEAD') {
    init.body = bodyOf(request)
    init.duplex = 'half'
  }
  return new Request(`http://${address}${request.url ?? '/'}`, init)
}

/** The body as it arrives; a handler that stops reading early still gets its answer through. */
function bodyOf(request: IncomingMessage): ReadableStream<Uint8Array<ArrayBuffer>> {
  const chunks: AsyncIterator<Buffer<ArrayBuffer>> = request.iterator({ destroyOnReturn: false })
  return new ReadableStream({
    async pull(controller) {
      const { done, value } = await chunks.next()
      if (done) controller.close()
      else controller.enqueue(value)
    },
    cancel() {
      // The rest is thrown away as it comes; the server's request time limit bounds it.
      request.resume()
    },
  })
}

async function send(response: ServerResponse, answer: Response): Promise<void> {
  response.writeHead(answer.status, Object.fromEntries(answer.headers))
  if (!answer.body) {
    response.end()
    return
  }
  const reader = answer.body.getReader()
  response.on('close', () => void reader.cancel().catch(() => undefined))
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    if (!response.write(value))
      await new Promise(resolve => response.once('drain', resolve).once('close', resolve))
    if (response.destroyed) return
  }
  response.end()
}

// The loopback server: node:http in front of the fetch handler, bound to 127.0.0.1 and nothing else.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { FetchHandler } from '../handler.ts'
import { limits } from '../limits.ts'
import { securityHeaders } from '../security-headers.ts'
import { sameToken } from '../session-token.ts'
import { sessionHeader } from '../../shared/contract/routes.ts'
import { type ConnectionLimits, limitConnections } from './connections.ts'
import { endEarly, send, toRequest } from './node-fetch-bridge.ts'
import { createOneTimeCodes } from './one-time-code.ts'
import { refuseRequest } from './request-checks.ts'
import { tradeCode } from './trade-code.ts'

export type LoopbackServer = {
  /** "127.0.0.1:<port>" */
  address: string
  /** A link that works once, within a minute. */
  link: () => string
  close: () => Promise<void>
}

export type ServerOptions = {
  handler: FetchHandler
  token: string
  /** 0: any free one. */
  port: number
  now?: () => number
  connections?: ConnectionLimits
}

/** Throws the error of the system where the port is taken. */
export async function startServer(options: ServerOptions): Promise<LoopbackServer> {
  const { handler, token, port } = options
  const codes = createOneTimeCodes(options.now)
  let address = ''

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const refusal = refuseRequest(request, address)
    if (refusal) {
      refuse(request, response, refusal.status, refusal.text)
      return
    }
    if (sameToken(oneOf(request.headers[sessionHeader]), token)) connections.trust(request)
    if (request.url === '/session') {
      await send(request, response, await tradeCode(request, codes, token))
      return
    }
    const stop = new AbortController()
    response.on('close', () => stop.abort())
    await send(request, response, await handler(toRequest(request, address, stop.signal)))
  }

  const server = createServer({
    headersTimeout: limits.headerMs,
    // Streams of progress stay open on the answering side; this bounds how long a request may take to arrive.
    requestTimeout: limits.requestMs,
    connectionsCheckingInterval: 1000,
    keepAliveTimeout: 5000,
    insecureHTTPParser: false,
  })
  const connections = limitConnections(server, options.connections)
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

const oneOf = (header: string | string[] | undefined): string | undefined =>
  typeof header === 'string' ? header : undefined

const portOf = (server: Server): number => {
  const at = server.address()
  return at !== null && typeof at === 'object' ? at.port : 0
}

/** The body is not read. */
function refuse(request: IncomingMessage, response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, {
    ...securityHeaders,
    'content-type': 'text/plain; charset=utf-8',
    'cache-control': 'no-store',
    connection: 'close',
  })
  endEarly(request)
  response.end(text)
}

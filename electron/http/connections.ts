// A bounded number of connections, none of which may be held by doing next to nothing. The port is open to every program
// and user of this computer, so a stranger who opens many must not keep the person's own page out.
import type { IncomingMessage, Server } from 'node:http'
import type { Socket } from 'node:net'
import { limits } from '../limits.ts'

export type ConnectionLimits = { most: number; slowestBytes: number; slowWindowMs: number }

type Receiving = { request: IncomingMessage; since: number; bytes: number }
type Connection = { trusted: boolean; receiving?: Receiving | undefined }

export type Connections = {
  /** The one behind this request knows the session: it is never dropped to make room. */
  trust: (request: IncomingMessage) => void
}

const checkMs = 500

export function limitConnections(
  server: Server,
  { most, slowestBytes, slowWindowMs }: ConnectionLimits = {
    most: limits.connections,
    slowestBytes: limits.slowestBytes,
    slowWindowMs: limits.slowWindowMs,
  },
): Connections {
  // Oldest first.
  const connections = new Map<Socket, Connection>()

  server.on('connection', (socket: Socket) => {
    if (connections.size >= most) {
      const stranger = [...connections].find(([, { trusted }]) => !trusted)?.[0]
      if (!stranger) {
        socket.destroy()
        return
      }
      connections.delete(stranger)
      stranger.destroy()
    }
    connections.set(socket, { trusted: false })
    socket.once('close', () => connections.delete(socket))
  })

  server.on('request', (request: IncomingMessage) => {
    const connection = connections.get(request.socket)
    if (connection) connection.receiving = { request, since: Date.now(), bytes: request.socket.bytesRead }
  })

  const timer = setInterval(() => {
    for (const [socket, connection] of connections) {
      const { receiving } = connection
      if (!receiving) continue
      if (receiving.request.complete) connection.receiving = undefined
      else if (Date.now() - receiving.since >= slowWindowMs) {
        if (socket.bytesRead - receiving.bytes < slowestBytes) socket.destroy()
        receiving.since = Date.now()
        receiving.bytes = socket.bytesRead
      }
    }
  }, checkMs)
  timer.unref()
  server.on('close', () => clearInterval(timer))

  return {
    trust(request) {
      const connection = connections.get(request.socket)
      if (connection) connection.trusted = true
    },
  }
}

// A loopback host on a fresh catalogue, in this process, for tests that look at single requests.
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createHandler, type FetchHandler } from '../../electron/handler.ts'
import { type ServerOptions, startServer } from '../../electron/http/server.ts'
import { loadPageFiles } from '../../electron/page-files.ts'
import { appVersion, demoFolder, pageFolder } from '../../electron/places-on-disk.ts'
import { createServices, type Services } from '../../electron/services/services.ts'
import { openCatalogue } from '../../electron/services/store/catalogue.ts'
import { secret } from '../../electron/session-token.ts'
import { sessionHeader } from '../../shared/contract/routes.ts'

export type LoopbackHost = {
  address: string
  port: number
  origin: string
  token: string
  services: Services
  link: () => string
  /** Requests that came through to the handler. */
  handled: string[]
  /** Names of temporary upload files. */
  incoming: () => Promise<string[]>
  /** What was logged. */
  logged: unknown[]
  close: () => Promise<void>
}

export async function openLoopback(
  options: Partial<Pick<ServerOptions, 'now' | 'connections'>> = {},
): Promise<LoopbackHost> {
  const folder = await mkdtemp(join(tmpdir(), 'plugtray-loopback-'))
  const catalogue = await openCatalogue(join(folder, 'catalogue'), { appVersion })
  const logged: unknown[] = []
  const services = createServices(catalogue, {
    host: 'browser',
    appVersion,
    log: { error: (_, error) => logged.push(error) },
    demoFolder,
  })
  const token = secret()
  const inner = createHandler(services, { token, page: loadPageFiles(pageFolder) })
  const handled: string[] = []
  const handler: FetchHandler = request => {
    handled.push(`${request.method} ${new URL(request.url).pathname}`)
    return inner(request)
  }
  const server = await startServer({ handler, token, port: 0, ...options })
  return {
    address: server.address,
    port: Number(server.address.split(':')[1]),
    origin: `http://${server.address}`,
    token,
    services,
    link: server.link,
    handled,
    incoming: () => readdir(join(folder, 'catalogue', 'incoming')).catch(() => []),
    logged,
    async close() {
      await server.close()
      await services.close()
      await rm(folder, { recursive: true, force: true })
    },
  }
}

/** Headers of a well-formed operation. */
export const asPage = (host: LoopbackHost): Record<string, string> => ({
  [sessionHeader]: host.token,
  'content-type': 'application/json',
})

/** Sends bytes as they are and gives back everything that comes until the connection ends. */
export function raw(port: number, text: string, waitMs = 3000): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1')
    let answer = ''
    const timer = setTimeout(() => socket.destroy(), waitMs)
    socket.on('data', chunk => {
      answer += chunk.toString('latin1')
    })
    socket.on('error', error => (answer === '' ? reject(error) : resolve(answer)))
    socket.on('close', () => {
      clearTimeout(timer)
      resolve(answer)
    })
    socket.write(text)
  })
}

/** Status of a raw answer; 0 when there was none. */
export const statusOf = (answer: string): number => Number(/^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1] ?? 0)

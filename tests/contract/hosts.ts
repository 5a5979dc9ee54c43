// The three ways to the same services: the handler in memory, the desktop host on a double of Electron, loopback HTTP.
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createORPCClient } from '@orpc/client'
import { RPCLink } from '@orpc/client/fetch'
import type { ContractRouterClient } from '@orpc/contract'
import { createHandler } from '../../electron/handler.ts'
import { serveBrowserHost } from '../../electron/http/serve.ts'
import { start } from '../../electron/main.ts'
import { loadPageFiles } from '../../electron/page-files.ts'
import { appVersion, demoFolder } from '../../electron/places-on-disk.ts'
import { createServices } from '../../electron/services/services.ts'
import { openCatalogue } from '../../electron/services/store/catalogue.ts'
import { secret } from '../../electron/session-token.ts'
import type { Contract } from '../../shared/contract/contract.ts'
import { fileNameHeader, rpcPrefix, sessionHeader, uploadRoute } from '../../shared/contract/routes.ts'
import * as electron from '../doubles/electron.ts'

export type Api = ContractRouterClient<Contract>

export type HostUnderTest = {
  api: Api
  token: string
  /** A request as the page makes it, with the session's token unless other headers are given. */
  ask: (path: string, init?: RequestInit) => Promise<Response>
  /** Hands a file over as this host's page does; gives its ref. */
  addFile: (name: string, bytes: Uint8Array) => Promise<string>
  close: () => Promise<void>
}

type Fetch = (request: Request) => Promise<Response>
export type OpenHost = (folder: string) => Promise<HostUnderTest>

function through(base: string, token: string, fetch: Fetch) {
  const headers = { [sessionHeader]: token }
  const api: Api = createORPCClient(
    new RPCLink({ url: `${base}${rpcPrefix}`, headers, fetch: (request: Request) => fetch(request) }),
  )
  const ask = (path: string, init: RequestInit = {}) =>
    fetch(new Request(`${base}${path}`, { headers, ...init }))
  return { api, ask, token }
}

async function upload(ask: HostUnderTest['ask'], token: string, name: string, bytes: Uint8Array) {
  const answer = await ask(uploadRoute, {
    method: 'POST',
    headers: {
      [sessionHeader]: token,
      [fileNameHeader]: encodeURIComponent(name),
      'content-type': 'application/octet-stream',
    },
    body: Uint8Array.from(bytes),
  })
  const body: unknown = await answer.json()
  if (typeof body === 'object' && body !== null && 'ref' in body) return String(body.ref)
  throw new Error(`upload answered ${answer.status}`)
}

const silent = { error: () => undefined }

const inMemory: OpenHost = async folder => {
  const catalogue = await openCatalogue(folder, { appVersion })
  const services = createServices(catalogue, { host: 'memory', appVersion, log: silent, demoFolder })
  const token = secret()
  const handler = createHandler(services, { token, page: loadPageFiles(join(folder, 'no-page')) })
  const { api, ask } = through('http://memory.test', token, handler)
  return {
    api,
    ask,
    token,
    addFile: (name, bytes) => upload(ask, token, name, bytes),
    close: () => services.close(),
  }
}

const value = (reply: unknown): string => {
  if (typeof reply === 'object' && reply !== null && 'value' in reply) return String(reply.value)
  throw new Error(`the desktop host refused: ${JSON.stringify(reply)}`)
}

/** `vi.mock('electron', ...)` must put the double in place first. */
const onDesktop: OpenHost = async folder => {
  electron.forgetEverything()
  process.env.PLUGTRAY_CATALOGUE = folder
  await start()
  const token = value(await electron.askAsPage('session'))
  const serve = electron.asked.protocols.get('app')
  if (!serve) throw new Error('the scheme is not served')
  const { api, ask } = through('app://plugtray', token, async request => serve(request))
  const files = await mkdtemp(join(tmpdir(), 'plugtray-files-'))
  return {
    api,
    ask,
    token,
    async addFile(name, bytes) {
      const path = join(files, name)
      await writeFile(path, bytes)
      return value(await electron.askAsPage('file-ref', path))
    },
    async close() {
      electron.app.emit('window-all-closed')
      while (!electron.asked.ended) await new Promise(resolve => setTimeout(resolve, 5))
      delete process.env.PLUGTRAY_CATALOGUE
      await rm(files, { recursive: true, force: true })
    },
  }
}

const overHttp: OpenHost = async folder => {
  const host = await serveBrowserHost({ folder, port: 0, open: false, log: silent })
  const link = new URL(host.link)
  const traded: unknown = await (
    await fetch(`${link.origin}/session`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code: link.hash.slice('#code='.length) }),
    })
  ).json()
  if (typeof traded !== 'object' || traded === null || !('token' in traded)) throw new Error('no token')
  const token = String(traded.token)
  const { api, ask } = through(link.origin, token, request => fetch(request))
  return {
    api,
    ask,
    token,
    addFile: (name, bytes) => upload(ask, token, name, bytes),
    close: () => host.close(),
  }
}

export const hosts: readonly (readonly [name: string, open: OpenHost])[] = [
  ['the handler in memory', inMemory],
  ['the desktop host on a double of Electron', onDesktop],
  ['the browser host over loopback HTTP', overHttp],
]

// One fetch handler under both hosts: typed operations, uploads, photos, exports and the files of the page.
import { timingSafeEqual } from 'node:crypto'
import { RPCHandler } from '@orpc/server/fetch'
import { BodyLimitPlugin } from '@orpc/server/fetch'
import {
  exportRoute,
  fileNameHeader,
  photoKinds,
  photoRoute,
  rpcPrefix,
  sessionHeader,
  uploadRoute,
} from '../shared/contract/routes.ts'
import { faultCodes } from '../shared/contract/errors.ts'
import { limits } from './limits.ts'
import type { PageFiles } from './page-files.ts'
import { securityHeaders } from './security-headers.ts'
import { FaultError } from './services/fault.ts'
import { router } from './services/router.ts'
import { type Services, unknownFault } from './services/services.ts'
import { readFile } from 'node:fs/promises'

export type HandlerOptions = { token: string; page: PageFiles }
export type FetchHandler = (request: Request) => Promise<Response>

const json = (status: number, value: unknown): Response =>
  new Response(JSON.stringify(value), {
    status,
    headers: { 'content-type': 'application/json', 'cache-control': 'no-store' },
  })

const plain = (status: number, text: string): Response =>
  new Response(text, {
    status,
    headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
  })

/** Compares without telling by its duration how much was right. */
export function sameToken(given: string | null, token: string): boolean {
  const a = Buffer.from(given ?? '')
  const b = Buffer.from(token)
  return a.length === b.length && timingSafeEqual(a, b)
}

export function createHandler(services: Services, { token, page }: HandlerOptions): FetchHandler {
  const rpc = new RPCHandler(router, { plugins: [new BodyLimitPlugin({ maxBodySize: limits.jsonBytes })] })

  const answer = async (request: Request): Promise<Response> => {
    const { pathname } = new URL(request.url)
    const isRpc = pathname.startsWith(`${rpcPrefix}/`)
    const isUpload = pathname === uploadRoute
    const photo = pathname.startsWith(`${photoRoute}/`) ? pathname.slice(photoRoute.length + 1) : undefined
    const exported = pathname.startsWith(`${exportRoute}/`)
      ? pathname.slice(exportRoute.length + 1)
      : undefined
    if (!isRpc && !isUpload && photo === undefined && exported === undefined)
      return page.answer(request.method, pathname)
    if (!sameToken(request.headers.get(sessionHeader), token))
      return plain(401, 'This session is not known. Open the app again.')
    if (photo !== undefined) return servePhoto(request.method, photo)
    if (exported !== undefined) return serveExport(request.method, exported)
    if (request.method !== 'POST') return plain(405, 'Only POST changes or asks anything here.')
    if (isUpload) return receiveUpload(request)
    if (request.headers.get('content-type') !== 'application/json')
      return plain(415, 'Send application/json.')
    const { matched, response } = await rpc.handle(request, { prefix: rpcPrefix, context: { services } })
    if (!matched) return plain(404, 'There is no such operation.')
    response.headers.set('cache-control', 'no-store')
    return response
  }

  const receiveUpload = async (request: Request): Promise<Response> => {
    if (request.headers.get('content-type') !== 'application/octet-stream')
      return plain(415, 'Send application/octet-stream.')
    const named = request.headers.get(fileNameHeader)
    const name = named === null ? undefined : decoded(named)
    if (name === undefined || name === '')
      return plain(400, `Name the file in ${fileNameHeader}, percent-encoded.`)
    const ref = await services.files.receive(name, bodyOf(request))
    return json(200, { ref })
  }

  const servePhoto = async (method: string, rest: string): Promise<Response> => {
    if (method !== 'GET') return plain(405, 'Photos are only read here.')
    const parts = /^([0-9a-f]{64})\/([a-z]+)$/.exec(rest)
    const kind = photoKinds.find(one => one === parts?.[2])
    if (!parts?.[1] || !kind) return plain(404, 'There is no such photo.')
    const picture = await services.catalogue.photos.derived(parts[1], kind)
    const bytes = 'bytes' in picture ? picture.bytes : await readFile(picture.path)
    return new Response(Uint8Array.from(bytes), {
      headers: {
        'content-type': picture.type,
        'content-security-policy': 'sandbox',
        // Named by content: it never changes.
        'cache-control': 'private, max-age=31536000, immutable',
      },
    })
  }

  const serveExport = (method: string, id: string): Response => {
    const file = method === 'GET' ? services.exports.get(id) : undefined
    if (!file) return plain(404, 'There is no such file (any more). Make it again.')
    return new Response(Uint8Array.from(file.bytes), {
      headers: {
        'content-type': file.type,
        'content-security-policy': 'sandbox',
        'content-disposition': `attachment; filename*=UTF-8''${encodeURIComponent(file.fileName)}`,
        'cache-control': 'no-store',
      },
    })
  }

  return async request => {
    let response: Response
    try {
      response = await answer(request)
    } catch (error) {
      const fault = error instanceof FaultError ? error : unknownFault(error, services.log)
      response = json(faultCodes[fault.code].status, { code: fault.code, fault: fault.fault })
    }
    for (const [name, value] of Object.entries(securityHeaders))
      if (!response.headers.has(name)) response.headers.set(name, value)
    return response
  }
}

function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text)
  } catch {
    return undefined
  }
}

async function* bodyOf(request: Request): AsyncGenerator<Uint8Array> {
  const reader = request.body?.getReader()
  if (!reader) return
  try {
    for (;;) {
      const { done, value } = await reader.read()
      if (done) return
      yield value
    }
  } finally {
    // Stops the sender where the reader gave up; a body that ended has nothing to cancel.
    await reader.cancel().catch(() => undefined)
  }
}

// The routes beside the typed operations: a file comes in, a picture or a finished report goes out.
import { readFile } from 'node:fs/promises'
import { fileNameHeader, photoKinds, sessionHeader } from '../shared/contract/routes.ts'
import { json, plain } from './answers.ts'
import { bodyOf } from './body-of.ts'
import type { Services } from './services/services.ts'

/** What a browser may do with these bytes when it is led to them directly: nothing. */
const sandboxed = { 'content-security-policy': 'sandbox' }

/** One file, streamed to the disk: answers {"ref"}. */
export async function receiveUpload(services: Services, request: Request): Promise<Response> {
  if (request.headers.get('content-type') !== 'application/octet-stream')
    return plain(415, 'Send application/octet-stream.')
  const name = decoded(request.headers.get(fileNameHeader) ?? '')
  if (name === undefined || name === '' || name.length > 1024)
    return plain(400, `Name the file in ${fileNameHeader}, percent-encoded.`)
  return json(200, { ref: await services.files.receive(name, bodyOf(request)) })
}

/** `rest`: "<sha256>/<kind>". The type comes from our own record, never from a file's name. */
export async function servePhoto(services: Services, request: Request, rest: string): Promise<Response> {
  if (request.method !== 'GET') return plain(405, 'Photos are only read here.')
  const [, sha256, named] = /^([0-9a-f]{64})\/([a-z]+)$/.exec(rest) ?? []
  const kind = photoKinds.find(one => one === named)
  if (sha256 === undefined || kind === undefined) return plain(404, 'There is no such photo.')
  const picture = await services.catalogue.photos.derived(sha256, kind)
  const bytes = 'bytes' in picture ? picture.bytes : await readFile(picture.path)
  return new Response(Uint8Array.from(bytes), {
    headers: {
      ...sandboxed,
      'content-type': picture.type,
      // Named by content, so it never changes while the program runs. Another session has another header: what a newer
      // version of the program makes of a photo is not hidden by what an older one made.
      'cache-control': 'private, max-age=31536000, immutable',
      vary: sessionHeader,
    },
  })
}

export function serveExport(services: Services, request: Request, id: string): Response {
  if (request.method !== 'GET') return plain(405, 'Reports are only read here.')
  const file = services.exports.get(id)
  if (!file) return plain(404, 'There is no such file (any more). Make it again.')
  return new Response(Uint8Array.from(file.bytes), {
    headers: {
      ...sandboxed,
      'content-type': file.type,
      'content-disposition': `attachment; filename*=UTF-8''${encodeURIComponent(file.fileName)}`,
      'cache-control': 'no-store',
    },
  })
}

function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text)
  } catch {
    return undefined
  }
}

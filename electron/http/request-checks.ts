// What a request must be before anything looks at it: for this very address, from our own page, in plain HTTP/1.1.
import type { IncomingMessage } from 'node:http'

export type Refusal = { status: number; text: string }

/** Null when the request may pass. A browser that was led here by a foreign name sends that name as Host. */
export function refuseRequest(request: IncomingMessage, address: string): Refusal | null {
  const hosts = request.rawHeaders.filter((name, i) => i % 2 === 0 && name.toLowerCase() === 'host')
  if (hosts.length !== 1 || request.headers.host !== address)
    return { status: 421, text: `This is not the address. Use http://${address}/` }
  if (!request.url?.startsWith('/') || request.url.startsWith('//'))
    return { status: 421, text: `Ask for a path on http://${address}/` }
  const { origin } = request.headers
  if (origin !== undefined && origin !== `http://${address}`)
    return { status: 403, text: 'Only the app\u2019s own page may ask.' }
  const site = request.headers['sec-fetch-site']
  const opensPage = request.method === 'GET' && site === 'none'
  if (site !== undefined && site !== 'same-origin' && !opensPage)
    return { status: 403, text: 'Only the app\u2019s own page may ask.' }
  if (request.headers['transfer-encoding'] !== undefined && request.headers['content-length'] !== undefined)
    return { status: 400, text: 'One length only.' }
  return null
}

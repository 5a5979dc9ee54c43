// What a request must be before anything looks at it: for this very address, from our own page, in plain HTTP/1.1.
import type { IncomingMessage } from 'node:http'

export type Refusal = { status: number; text: string }

const foreign: Refusal = { status: 403, text: 'Only the app\u2019s own page may ask.' }

/** Null when the request may pass. A browser that was led here by a foreign name sends that name as Host. */
export function refuseRequest(request: IncomingMessage, address: string): Refusal | null {
  const hosts = request.rawHeaders.filter((name, i) => i % 2 === 0 && name.toLowerCase() === 'host')
  const { url = '', method, headers } = request
  if (hosts.length !== 1 || headers.host !== address || !url.startsWith('/'))
    return { status: 421, text: `This is not the address. Use http://${address}/` }

  const { origin } = headers
  if (origin !== undefined && origin !== `http://${address}`) return foreign
  const site = headers['sec-fetch-site']
  // "none" is what a person does: typing the address, opening a link from outside the browser.
  const opensPage = method === 'GET' && url === '/' && site === 'none'
  if (site !== undefined && site !== 'same-origin' && !opensPage) return foreign

  if (method !== 'GET' && method !== 'POST') return { status: 405, text: 'Only GET and POST are answered.' }
  if (headers['transfer-encoding'] !== undefined && headers['content-length'] !== undefined)
    return { status: 400, text: 'One length only.' }
  if (!isPlainPath(url)) return { status: 404, text: 'There is no such page.' }
  return null
}

/** True when the path is what it says: nothing that a reader might climb, decode or fold into another one. */
function isPlainPath(url: string): boolean {
  const [path = ''] = url.split('?', 1)
  return /^\/(?!\/)[A-Za-z0-9._/-]*$/.test(path) && !path.split('/').some(part => /^\.+$/.test(part))
}

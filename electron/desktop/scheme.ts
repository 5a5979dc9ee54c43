// Our own scheme in place of file: and http:, so that page, photos and operations share one origin.
import { protocol } from 'electron'
import type { FetchHandler } from '../handler.ts'
import { isOurs, scheme } from './origin.ts'

/** Must run before the app is ready. No privilege to go round the content security policy, no service workers. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ])
}

export function serveScheme(handler: FetchHandler): void {
  protocol.handle(scheme, async request => {
    if (!isOurs(request.url)) return new Response('There is no such page.', { status: 404 })
    const { origin } = new URL(request.url)
    const from = request.headers.get('origin')
    if (from !== null && from !== origin && from !== `${scheme}://plugtray`)
      return new Response('Only the app\u2019s own page may ask.', { status: 403 })
    return handler(request)
  })
}

// Our own scheme in place of file: and http:, so that page, photos and operations share one origin.
import { type Privileges, protocol } from 'electron'
import { plain } from '../answers.ts'
import type { FetchHandler } from '../handler.ts'
import { isOurs, origin, scheme } from './origin.ts'

/** Nothing goes round the content security policy, and there are no service workers. */
export const privileges: Privileges = { standard: true, secure: true, supportFetchAPI: true, stream: true }

/** Must run before the app is ready. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([{ scheme, privileges }])
}

/** Only for our own host, and only for our own page; then as over HTTP. */
export function serveScheme(handler: FetchHandler): void {
  protocol.handle(scheme, async request => {
    if (!isOurs(request.url)) return plain(404, 'There is no such page.')
    const from = request.headers.get('origin')
    if (from !== null && from !== origin) return plain(403, 'Only the app\u2019s own page may ask.')
    return handler(request)
  })
}

// One fetch handler under both hosts: typed operations, uploads, photos, exports and the files of the page.
import { ORPCError } from '@orpc/server'
import { exportRoute, photoRoute, rpcPrefix, sessionHeader, uploadRoute } from '../shared/contract/routes.ts'
import { faultAnswer, json, plain } from './answers.ts'
import { receiveUpload, serveExport, servePhoto } from './byte-routes.ts'
import { answerOperations } from './operations.ts'
import type { PageFiles } from './page-files.ts'
import { securityHeaders } from './security-headers.ts'
import { FaultError } from './services/fault.ts'
import { type Services, unknownFault } from './services/services.ts'
import { sameToken } from './session-token.ts'

export type HandlerOptions = { token: string; page: PageFiles }
export type FetchHandler = (request: Request) => Promise<Response>

const unknownSession = 'This session is not known. Open the app again.'

/** The page's own files go to anyone who may ask this host; everything else needs the session's token. */
export function createHandler(services: Services, { token, page }: HandlerOptions): FetchHandler {
  const operations = answerOperations(services)

  const answer = async (request: Request): Promise<Response> => {
    const { pathname } = new URL(request.url)
    const below = (route: string) =>
      pathname.startsWith(`${route}/`) ? pathname.slice(route.length + 1) : undefined
    const operation = below(rpcPrefix)
    const photo = below(photoRoute)
    const exported = below(exportRoute)
    const isUpload = pathname === uploadRoute
    if (operation === undefined && photo === undefined && exported === undefined && !isUpload)
      return page.answer(request.method, pathname)

    if (!sameToken(request.headers.get(sessionHeader), token))
      return operation === undefined
        ? plain(401, unknownSession)
        : json(401, {
            json: new ORPCError('UNAUTHORIZED', { status: 401, message: unknownSession }).toJSON(),
          })
    if (photo !== undefined) return servePhoto(services, request, photo)
    if (exported !== undefined) return serveExport(services, request, exported)
    if (request.method !== 'POST') return plain(405, 'Only POST changes or asks anything here.')
    if (isUpload) return receiveUpload(services, request)
    if (request.headers.get('content-type') !== 'application/json')
      return plain(415, 'Send application/json.')
    return operations(request)
  }

  return async request => {
    let response: Response
    try {
      response = await answer(request)
    } catch (error) {
      response = faultAnswer(error instanceof FaultError ? error : unknownFault(error, services.log))
    }
    for (const [name, value] of Object.entries(securityHeaders))
      if (!response.headers.has(name)) response.headers.set(name, value)
    return response
  }
}

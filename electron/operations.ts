// Requests for typed operations: JSON of a bounded size in the client's envelope, then the router.
import { RPCHandler } from '@orpc/server/fetch'
import { z } from 'zod'
import { rpcPrefix } from '../shared/contract/routes.ts'
import { operationFaultAnswer } from './answers.ts'
import { bodyOf } from './body-of.ts'
import { limits } from './limits.ts'
import { FaultError } from './services/fault.ts'
import { router } from './services/router.ts'
import type { Services } from './services/services.ts'

/**
 * What the client sends around its input. `meta` would name places of the input that are dates, sets and so on; the
 * contract has none, and nothing that walks through paths from outside is let in.
 */
const envelope = z.strictObject({
  json: z.unknown().optional(),
  meta: z.array(z.never()).max(0).optional(),
})

const badInput = (what: string) =>
  new FaultError('BAD_INPUT', { what, where: 'request', hint: 'Nothing was changed.' })

/** Answers a POST below the prefix of the operations whose session was checked. */
export function answerOperations(services: Services): (request: Request) => Promise<Response> {
  const handler = new RPCHandler(router)
  return async request => {
    try {
      const body = await readJson(request)
      const { matched, response } = await handler.handle(
        new Request(request.url, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body,
          signal: request.signal,
        }),
        { prefix: rpcPrefix, context: { services } },
      )
      if (!matched)
        throw new FaultError('NOT_FOUND', {
          what: 'There is no such operation.',
          where: new URL(request.url).pathname.slice(rpcPrefix.length + 1, rpcPrefix.length + 81),
          hint: 'Load the page again: it may be older than the program.',
        })
      response.headers.set('cache-control', 'no-store')
      return response
    } catch (error) {
      if (error instanceof FaultError) return operationFaultAnswer(error)
      throw error
    }
  }
}

/** Text of a checked envelope. Throws TOO_LARGE while counting, whatever length was announced, and BAD_INPUT. */
async function readJson(request: Request): Promise<string> {
  const chunks: Uint8Array[] = []
  let bytes = 0
  for await (const chunk of bodyOf(request)) {
    bytes += chunk.byteLength
    if (bytes > limits.jsonBytes)
      throw new FaultError('TOO_LARGE', {
        what: 'The request is larger than 1 MiB.',
        where: 'request',
        hint: 'Nothing was changed.',
      })
    chunks.push(chunk)
  }
  let text = ''
  let value: unknown = {}
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks))
    if (text !== '') value = JSON.parse(text)
  } catch {
    throw badInput('The request is not JSON.')
  }
  if (!envelope.safeParse(value).success) throw badInput('The request has not the form of an operation.')
  return text === '' ? '{}' : text
}

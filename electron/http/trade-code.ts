// POST /session: the one-time code of the link for the session's token.
import type { IncomingMessage } from 'node:http'
import { z } from 'zod'
import { json, plain } from '../answers.ts'
import { securityHeaders } from '../security-headers.ts'
import type { OneTimeCodes } from './one-time-code.ts'

const bodySchema = z.strictObject({ code: z.string().max(100) })
const mostCharacters = 1000

export async function tradeCode(
  request: IncomingMessage,
  codes: OneTimeCodes,
  token: string,
): Promise<Response> {
  const response = await answer(request, codes, token)
  for (const [name, value] of Object.entries(securityHeaders)) response.headers.set(name, value)
  return response
}

async function answer(request: IncomingMessage, codes: OneTimeCodes, token: string): Promise<Response> {
  if (request.method !== 'POST') return plain(405, 'Send the code by POST.')
  if (request.headers['content-type'] !== 'application/json') return plain(415, 'Send application/json.')
  let text = ''
  for await (const chunk of request.iterator({ destroyOnReturn: false })) {
    text += String(chunk)
    if (text.length > mostCharacters) return plain(413, 'A code is shorter than this.')
  }
  const body = bodySchema.safeParse(parsed(text))
  if (!body.success) return plain(400, 'Send {"code": "..."}.')
  if (!codes.redeem(body.data.code))
    return plain(401, 'This link was used already or is too old. Open the app again.')
  return json(200, { token })
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

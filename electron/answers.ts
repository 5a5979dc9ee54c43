// The plain answers of the hosts: a sentence, or JSON. Never kept by a cache.
import { faultCodes } from '../shared/contract/errors.ts'
import { contractError } from './services/contract-error.ts'
import type { FaultError } from './services/fault.ts'

export const plain = (status: number, text: string): Response =>
  new Response(text, {
    status,
    headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
  })

export const json = (status: number, value: unknown): Response =>
  new Response(JSON.stringify(value), {
    status,
    headers: { 'content-type': 'application/json', 'cache-control': 'no-store' },
  })

/** A failure on a byte route: {code, fault}. */
export const faultAnswer = ({ code, fault }: FaultError): Response =>
  json(faultCodes[code].status, { code, fault })

/** A failure before an operation was reached, in the form in which the typed client expects it. */
export const operationFaultAnswer = (error: FaultError): Response =>
  json(faultCodes[error.code].status, { json: contractError(error).toJSON() })

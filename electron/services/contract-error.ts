// A typed failure in the form that the contract's client reads.
import { ORPCError } from '@orpc/server'
import { faultCodes } from '../../shared/contract/errors.ts'
import type { FaultError } from './fault.ts'

export const contractError = ({ code, fault }: FaultError): ORPCError<string, unknown> =>
  new ORPCError(code, { defined: true, status: faultCodes[code].status, message: fault.what, data: fault })

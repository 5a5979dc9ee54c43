// An expected failure of a service: a code from the contract's closed list, and what, where, hint for the person.
import type { Fault, FaultCode } from '../../shared/contract/errors.ts'
import type { Outcome } from '../../shared/job/refusal.ts'

export class FaultError extends Error {
  readonly code: FaultCode
  readonly fault: Fault
  constructor(code: FaultCode, fault: Fault, options?: ErrorOptions) {
    super(`${fault.what} ${fault.where} ${fault.hint}`.trim(), options)
    this.name = 'FaultError'
    this.code = code
    this.fault = fault
  }
}

/** The value of a pure function's outcome; its refusal becomes a typed failure. */
export function accept<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new FaultError('REFUSED', outcome.refusal)
}

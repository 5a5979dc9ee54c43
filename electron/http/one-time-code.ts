// The way a browser page gets its session token: a code in the link's fragment, good once and for a minute.
import { randomBytes } from 'node:crypto'
import { limits } from '../limits.ts'
import { sameToken } from '../handler.ts'

export type OneTimeCodes = {
  /** A fresh code; older ones that were not used stay good for their minute. */
  issue: () => string
  /** True exactly once for a code that is not too old. */
  redeem: (code: string) => boolean
}

export const secret = (): string => randomBytes(32).toString('base64url')

export function createOneTimeCodes(now: () => number = Date.now): OneTimeCodes {
  const codes = new Map<string, number>()
  return {
    issue() {
      const code = secret()
      codes.set(code, now() + limits.codeMs)
      return code
    },
    redeem(code) {
      for (const [known, until] of codes) {
        if (now() > until) codes.delete(known)
        else if (sameToken(code, known)) return codes.delete(known)
      }
      return false
    },
  }
}

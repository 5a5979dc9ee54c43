// The way a browser page gets its session token: a code in the link's fragment, good once and for a minute.
import { limits } from '../limits.ts'
import { sameToken, secret } from '../session-token.ts'

export type OneTimeCodes = {
  /** A fresh code; older ones that were not used stay good for their minute. */
  issue: () => string
  /** True exactly once for a code that is not too old. */
  redeem: (code: string) => boolean
}

export function createOneTimeCodes(now: () => number = Date.now): OneTimeCodes {
  const codes = new Map<string, number>()
  const dropOld = () => {
    for (const [code, until] of codes) if (now() >= until) codes.delete(code)
  }
  return {
    issue() {
      dropOld()
      const code = secret()
      codes.set(code, now() + limits.codeMs)
      return code
    },
    redeem(code) {
      dropOld()
      const known = [...codes.keys()].find(one => sameToken(code, one))
      return known !== undefined && codes.delete(known)
    },
  }
}

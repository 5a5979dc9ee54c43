// The secrets of a session: made at random, compared in constant time.
import { randomBytes, timingSafeEqual } from 'node:crypto'

/** 256 bits, as text that may stand in a header or a link. */
export const secret = (): string => randomBytes(32).toString('base64url')

/** Compares without telling by its duration how much was right. */
export function sameToken(given: string | null | undefined, token: string): boolean {
  const a = Buffer.from(given ?? '')
  const b = Buffer.from(token)
  return a.length === b.length && timingSafeEqual(a, b)
}

// Calling a number against a limit with a guard band as wide as its uncertainty: near the limit it cannot be called.
import { tidy } from './middle.ts'
import type { Verdict } from './verdict.ts'

export type Call = 'within' | 'outside' | 'cannot be called'

/** Against a lower limit; the limit itself is within. */
export function againstMinimum(value: number, plusMinus: number, minimum: number): Call {
  if (tidy(value - plusMinus) >= tidy(minimum)) return 'within'
  return tidy(value + plusMinus) < tidy(minimum) ? 'outside' : 'cannot be called'
}

/** Against an upper limit; the limit itself is within. */
export function againstMaximum(value: number, plusMinus: number, maximum: number): Call {
  if (tidy(value + plusMinus) <= tidy(maximum)) return 'within'
  return tidy(value - plusMinus) > tidy(maximum) ? 'outside' : 'cannot be called'
}

/** For the reason of a verdict: what would settle one that cannot be called. */
export const settle = (verdict: Verdict): string =>
  verdict === 'cannot be called'
    ? ' Too near the limit for this gauge: another pull or a finer gauge would settle it.'
    : ''

/**
 * How finely a common gauge is read: half a scale division either way. Common practice; judging is done in the trade's
 * units, so a gauge with another scale is taken to be as fine.
 */
export const readingError = {
  /** 5 psi divisions. */
  psi: 2.5,
  /** Leak-down: 2 psi divisions on two gauges, 2 % divisions on a dial. */
  leakPsi: 1,
  leakPercent: 1,
  /** 0.5 inHg divisions. */
  inHg: 0.25,
  /** The engine's speed wanders about 10 rpm while it is read. */
  rpm: 10,
  /** Shown to a tenth. */
  volts: 0.1,
} as const

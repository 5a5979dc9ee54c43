// What a gauge reading says against one rule: value with its uncertainty, limit with its source, and why.
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'

export type Verdict = 'within' | 'watch' | 'outside' | 'cannot be called' | 'noted'

export type GaugeVerdict = {
  test: TestKind
  /** Short name of the rule, e.g. "share of highest". */
  rule: string
  /** Absent for a verdict on the whole engine. */
  cylinder?: number
  stage: Stage
  value: number
  /** Half width of the interval the value lies in, same unit. */
  plusMinus?: number
  unit: string
  verdict: Verdict
  limit: string
  why: string
  /** Where the rule was read, or "common practice". */
  source: string
}

export const commonPractice = 'common practice'

/** Middle value; of an even count the mean of the two in the middle. NaN for none. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const half = Math.floor(sorted.length / 2)
  const upper = sorted[half] ?? Number.NaN
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? Number.NaN)) / 2
}

/** Against a lower limit with a guard band as wide as the uncertainty: near the limit it cannot be called. */
export function againstMinimum(
  value: number,
  plusMinus: number,
  minimum: number,
): 'within' | 'outside' | 'cannot be called' {
  if (value - plusMinus >= minimum) return 'within'
  return value + plusMinus < minimum ? 'outside' : 'cannot be called'
}

/** The same against an upper limit. */
export function againstMaximum(
  value: number,
  plusMinus: number,
  maximum: number,
): 'within' | 'outside' | 'cannot be called' {
  if (value + plusMinus <= maximum) return 'within'
  return value - plusMinus > maximum ? 'outside' : 'cannot be called'
}

/** For the reason of a verdict: what would settle one that cannot be called. */
export const settle = (verdict: Verdict): string =>
  verdict === 'cannot be called'
    ? ' Too near the limit for this gauge: another pull or a finer gauge would settle it.'
    : ''

export const byCylinder = (a: { cylinder: number }, b: { cylinder: number }): number =>
  a.cylinder - b.cylinder

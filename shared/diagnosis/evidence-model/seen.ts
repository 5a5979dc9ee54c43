// One piece of evidence: a finding seen on a cylinder or on the engine, and how well each of its outcomes fits.
import type { TestKind } from '../../job/pull-schema.ts'

export type Seen = {
  finding: string
  cylinder?: number
  /** One an outcome: chance of the reading, were that outcome true, up to a constant. */
  weights: readonly number[]
  from: TestKind | 'plug'
}

/** Outcome `at` of `count`, for what was seen and not measured. */
export const sure = (at: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => (i === at ? 1 : 0))

/** The named outcome. */
export const named = (outcomes: readonly string[], outcome: string): number[] =>
  sure(outcomes.indexOf(outcome), outcomes.length)

/**
 * A measured value as weights of the spans between `limits` (rising): the share of a normal distribution about the value that
 * lies in each. So a value near a limit says little, and none is cut off hard. `deviation` is standard, not an interval.
 */
export function spans(value: number, deviation: number, limits: readonly number[]): number[] {
  const below = [...limits.map(limit => share((limit - value) / Math.max(deviation, 1e-9))), 1]
  return below.map((one, at) => Math.max(0, one - (below[at - 1] ?? 0)))
}

/** Normal distribution function, logistic approximation good to 0.00014 (Bowling et al. 2009, from memory). */
const share = (z: number): number => 1 / (1 + Math.exp(-z * (1.5976 + 0.07056 * z * z)))

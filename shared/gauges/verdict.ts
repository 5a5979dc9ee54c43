// What a gauge reading says against one rule: value with its uncertainty, limit with its source, and why.
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'

/** "noted" is a measured fact that no limit speaks to. */
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
  /** It speaks of the reading (does it repeat, can it be at all), not of the engine. */
  about?: 'reading'
}

/** A verdict on one cylinder. */
export type CylinderVerdict = GaugeVerdict & { cylinder: number }

/** Short lists of verdicts are read by cylinder. */
export const byCylinder = (a: { cylinder: number }, b: { cylinder: number }): number =>
  a.cylinder - b.cylinder

// Cranking compression: cylinders against each other and a typed specification, first puff, repeats, wet beside dry.
import { cylindersOf } from '../engine/relations.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { firstPuffs, repeats } from './compression-build-up.ts'
import { againstHighest, againstLeast, againstMost, type Setting } from './compression-comparison.ts'
import { plausible, seaLevelEquals } from './compression-estimates.ts'
import { standsAbove } from './compression-high.ts'
import { differentTesters } from './compression-testers.ts'
import { compressionValues, isMeasured } from './compression-values.ts'
import { wetRises } from './compression-wet.ts'
import { type ShownUnits, tradeUnits } from './shown.ts'
import { byCylinder, type CylinderVerdict, type GaugeVerdict } from './verdict.ts'

/**
 * All verdicts that the compression pulls of one stage allow, by cylinder. Comparing cylinders needs no altitude: the
 * air is the same for all of them.
 */
export function judgeCompression(job: Job, stage: Stage, units: ShownUnits = tradeUnits): CylinderVerdict[] {
  const here = new Set(cylindersOf(job.layout))
  const values = compressionValues(job, stage)
    .filter(isMeasured)
    .filter(one => here.has(one.cylinder))
  const setting: Setting = { stage, units, circumstances: job.circumstances }
  const againstMates = againstHighest(values, setting)
  const outside = lowCylinders(againstMates.filter(one => one.verdict === 'outside'))
  // A cylinder that is clearly low against its mates needs no floor to say so.
  const least = againstLeast(values, setting).filter(
    one => one.rule !== 'usual floor' || !outside.has(one.cylinder),
  )
  const compared = [...againstMates, ...least]
  const low = lowCylinders(compared)
  return [
    ...compared,
    ...againstMost(values, setting),
    ...standsAbove(values, setting),
    ...firstPuffs(values, setting),
    ...values.map(one => repeats(one, setting)),
    ...differentTesters(values, job, stage),
    ...seaLevelEquals(values, setting),
    ...plausible(values, setting),
    ...wetRises(values, low, job.layout.arrangement, setting),
  ].toSorted(byCylinder)
}

/** Cylinders that a comparison or the specification calls low, or cannot clear. */
export const lowCylinders = (verdicts: readonly GaugeVerdict[]): Set<number> =>
  new Set(
    verdicts.flatMap(({ cylinder, rule, verdict }) =>
      cylinder !== undefined &&
      lowRules.has(rule) &&
      (verdict === 'outside' || verdict === 'cannot be called')
        ? [cylinder]
        : [],
    ),
  )

const lowRules: ReadonlySet<string> = new Set([
  'below highest',
  'share of highest',
  'share of average',
  'specified minimum',
])

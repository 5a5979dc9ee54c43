// Manifold vacuum in every state of the engine: while cranking, at idle, held at 2500 rpm, in a snap and on the overrun.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type Atmosphere, atmosphereOf } from './atmosphere.ts'
import { judgeNeedle } from './needle.ts'
import { type ShownUnits, tradeUnits, vacuumShown } from './shown.ts'
import { sources } from './sources.ts'
import { judgeCranking } from './vacuum-cranking.ts'
import { judgeIdle, judgeSwing } from './vacuum-idle.ts'
import { judgeSnap } from './vacuum-snap.ts'
import { judgeFast, judgeTrailing } from './vacuum-speed.ts'
import { greatestOf, isPossible, phaseValue } from './vacuum-values.ts'
import { airWords } from './vacuum-words.ts'
import type { GaugeVerdict } from './verdict.ts'

/** Verdicts on the whole engine; vacuum alone never names a cylinder. The needle while cranking comes before its level. */
export function judgeVacuum(job: Job, stage: Stage, units: ShownUnits = tradeUnits): GaugeVerdict[] {
  const idle = phaseValue(job, stage, 'idle')
  return [
    ...impossible(job, stage, atmosphereOf(job.circumstances), units),
    ...judgeNeedle(job, stage, 'cranking', units),
    ...judgeCranking(job, stage, units),
    ...(idle ? [judgeIdle(job, stage, idle, units)] : []),
    ...judgeSwing(job, stage, units),
    ...judgeNeedle(job, stage, 'idle', units),
    ...judgeFast(job, stage, idle, units),
    ...judgeNeedle(job, stage, '2500 rpm', units),
    ...judgeSnap(job, stage, idle, units),
    ...judgeNeedle(job, stage, 'snap', units),
    ...judgeTrailing(job, stage, idle, units),
    ...judgeNeedle(job, stage, 'trailing throttle', units),
  ]
}

/** One verdict for each state of the engine, on the highest of its readings that cannot be. */
function impossible(job: Job, stage: Stage, air: Atmosphere, units: ShownUnits): GaugeVerdict[] {
  const pulls = validPulls(job, 'vacuum', stage).filter(pull => !isPossible(job, pull))
  return (['idle', '2500 rpm', 'snap', 'trailing throttle', 'cranking'] as const).flatMap(phase => {
    const readings = pulls.filter(pull => pull.entry.phase === phase).map(greatestOf)
    if (readings.length === 0) return []
    return [
      {
        test: 'vacuum',
        rule: `possible at all, ${phase}`,
        stage,
        ...vacuumShown(Math.max(...readings), units),
        verdict: 'cannot be called',
        limit: `not above the ${airWords(air, units)}`,
        why: `A vacuum above the local air pressure cannot be, so ${readings.length === 1 ? 'this reading is' : `${readings.length} readings are`} left out: check unit, gauge and altitude.`,
        source: sources.physics,
        about: 'reading',
      } as const,
    ]
  })
}

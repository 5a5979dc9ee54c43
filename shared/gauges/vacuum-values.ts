// The vacuum readings of one stage, sorted by the state of the engine; a reading that cannot be is set apart.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toVacuum } from '../units/convert.ts'
import type { Vacuum } from '../units/quantity.ts'
import { atmosphereOf } from './atmosphere.ts'
import { readingError } from './calling.ts'
import { median, rangeOf, tidy } from './middle.ts'
import type { VacuumPhase } from './vacuum-entry.ts'

export type VacuumPull = PullOf<'vacuum'>
/** In inHg. */
export type VacuumValue = { value: number; plusMinus: number }

export const inHg = (quantity: Vacuum): number => tidy(toVacuum(quantity, 'inHg'))

/** The greatest number the gauge showed in this pull, inHg. */
export const greatestOf = ({ entry }: VacuumPull): number =>
  Math.max(inHg(entry.reading), entry.rebound ? inHg(entry.rebound) : Number.NEGATIVE_INFINITY)

/** Above the local air pressure no vacuum can be. */
export function isPossible(job: Job, pull: VacuumPull): boolean {
  return greatestOf(pull) <= tidy(atmosphereOf(job.circumstances).inHg)
}

/** Valid pulls that can be, in the order of entry. */
export const possiblePulls = (job: Job, stage: Stage, phase: VacuumPhase): VacuumPull[] =>
  validPulls(job, 'vacuum', stage).filter(pull => pull.entry.phase === phase && isPossible(job, pull))

/** Middle of some readings with half a scale division, or half their range where that is more. */
export function valueOf(readings: readonly number[]): VacuumValue | undefined {
  return readings.length === 0
    ? undefined
    : { value: median(readings), plusMinus: Math.max(readingError.inHg, rangeOf(readings) / 2) }
}

/** Middle of the valid readings of one phase, inHg; undefined when there are none. */
export const vacuumValue = (job: Job, stage: Stage, phase: VacuumPhase): number | undefined =>
  phaseValue(job, stage, phase)?.value

export const phaseValue = (job: Job, stage: Stage, phase: VacuumPhase): VacuumValue | undefined =>
  valueOf(possiblePulls(job, stage, phase).map(pull => inHg(pull.entry.reading)))

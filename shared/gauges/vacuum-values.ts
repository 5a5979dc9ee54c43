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
import type { VacuumEntry, VacuumPhase } from './vacuum-entry.ts'

export type VacuumPull = PullOf<'vacuum'>
/** In inHg. */
export type VacuumValue = { value: number; plusMinus: number }

export const inHg = (quantity: Vacuum): number => tidy(toVacuum(quantity, 'inHg'))

/** The greatest number the gauge showed in this pull, inHg. */
export const greatestOf = ({ entry }: VacuumPull): number =>
  Math.max(
    ...[entry.reading, entry.rebound, entry.settled, entry.range?.low, entry.range?.high].flatMap(one =>
      one ? [inHg(one)] : [],
    ),
  )

/** Above the local air pressure no vacuum can be. */
export function isPossible(job: Job, pull: VacuumPull): boolean {
  return greatestOf(pull) <= tidy(atmosphereOf(job.circumstances).inHg)
}

/** Valid pulls that can be, in the order of entry. */
export const possiblePulls = (job: Job, stage: Stage, phase: VacuumPhase): VacuumPull[] =>
  validPulls(job, 'vacuum', stage).filter(pull => pull.entry.phase === phase && isPossible(job, pull))

/** Half width within which this pull's gauge was read, inHg. */
const errorOf = (_job: Job, _pull: VacuumPull): number => readingError.inHg

/**
 * Middle of one number of some pulls with the error of the gauge, or half their range where that is more. `pick` gives the
 * number, or nothing for a pull that has none.
 */
export function valueOf(
  job: Job,
  pulls: readonly VacuumPull[],
  pick: (entry: VacuumEntry) => Vacuum | undefined,
): VacuumValue | undefined {
  const read = pulls.flatMap(pull => {
    const quantity = pick(pull.entry)
    return quantity ? [{ value: inHg(quantity), error: errorOf(job, pull) }] : []
  })
  if (read.length === 0) return undefined
  const values = read.map(one => one.value)
  return {
    value: median(values),
    plusMinus: Math.max(median(read.map(one => one.error)), rangeOf(values) / 2),
  }
}

/** Middle of the valid readings of one phase, inHg; undefined when there are none. */
export const vacuumValue = (job: Job, stage: Stage, phase: VacuumPhase): number | undefined =>
  phaseValue(job, stage, phase)?.value

export const phaseValue = (job: Job, stage: Stage, phase: VacuumPhase): VacuumValue | undefined =>
  valueOf(job, possiblePulls(job, stage, phase), entry => entry.reading)

/** How far the needle swings, inHg, with the lowest and highest it reached in any pull; nothing where no swing was noted. */
export function swingOf(
  job: Job,
  pulls: readonly VacuumPull[],
): (VacuumValue & { low: number; high: number }) | undefined {
  const swings = pulls.flatMap(pull => {
    const { range } = pull.entry
    if (!range) return []
    const [a, b] = [inHg(range.low), inHg(range.high)]
    return [{ low: Math.min(a, b), high: Math.max(a, b), error: errorOf(job, pull) }]
  })
  if (swings.length === 0) return undefined
  const widths = swings.map(one => tidy(one.high - one.low))
  return {
    value: median(widths),
    // Both ends are read, each with its own error.
    plusMinus: Math.max(median(swings.map(one => one.error)) * Math.SQRT2, rangeOf(widths) / 2),
    low: Math.min(...swings.map(one => one.low)),
    high: Math.max(...swings.map(one => one.high)),
  }
}

// The vacuum readings of one stage, sorted by the state of the engine; a reading that cannot be is set apart.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toVacuum } from '../units/convert.ts'
import type { Vacuum } from '../units/quantity.ts'
import { atmosphereOf } from './atmosphere.ts'
import { median, rangeOf, tidy } from './middle.ts'
import { intervalOf } from './uncertainty.ts'
import type { VacuumEntry, VacuumPhase } from './vacuum-entry.ts'
import { vacuumBounds } from './vacuum-error.ts'

export type VacuumPull = PullOf<'vacuum'>
/** In inHg. */
export type VacuumValue = {
  value: number
  plusMinus: number
  /** The same without what the gauge's accuracy class allows, */
  readOnly: number
  /** and the gauges it was read on: between readings of one gauge its class falls out. */
  testers: string
}

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

type Read = { value: number; absolute: number; read: number; tester: string }

function readOf(job: Job, { instrument }: VacuumPull, value: number): Read {
  const { read, byClass } = vacuumBounds(job, instrument)
  return {
    value,
    absolute: intervalOf(byClass > 0 ? [read, byClass] : [read]),
    read: intervalOf([read]),
    tester: instrument ?? '',
  }
}

function together(reads: readonly Read[]): VacuumValue {
  const values = reads.map(one => one.value)
  const half = rangeOf(values) / 2
  return {
    value: median(values),
    plusMinus: tidy(Math.max(median(reads.map(one => one.absolute)), half)),
    readOnly: tidy(Math.max(median(reads.map(one => one.read)), half)),
    testers: [...new Set(reads.map(one => one.tester))].toSorted().join(' '),
  }
}

/**
 * Middle of one number of some pulls with the error of the gauge, or half their range where that is more. `pick` gives the
 * number, or nothing for a pull that has none.
 */
export function valueOf(
  job: Job,
  pulls: readonly VacuumPull[],
  pick: (entry: VacuumEntry) => Vacuum | undefined,
): VacuumValue | undefined {
  const reads = pulls.flatMap(pull => {
    const quantity = pick(pull.entry)
    return quantity ? [readOf(job, pull, inHg(quantity))] : []
  })
  return reads.length === 0 ? undefined : together(reads)
}

/** Half width of the difference of two values, inHg. */
export const doubtBetween = (a: VacuumValue, b: VacuumValue): number =>
  a.testers === b.testers && !a.testers.includes(' ')
    ? Math.hypot(a.readOnly, b.readOnly)
    : Math.hypot(a.plusMinus, b.plusMinus)

/** Middle of the valid readings of one phase; undefined when there are none. */
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
    const [low, high] = [Math.min(a, b), Math.max(a, b)]
    const read = readOf(job, pull, tidy(high - low))
    // Both ends are read on one gauge, each with its own error.
    const error = read.read * Math.SQRT2
    return [{ low, high, read: { ...read, read: error, absolute: error } }]
  })
  if (swings.length === 0) return undefined
  return {
    ...together(swings.map(one => one.read)),
    low: Math.min(...swings.map(one => one.low)),
    high: Math.max(...swings.map(one => one.high)),
  }
}

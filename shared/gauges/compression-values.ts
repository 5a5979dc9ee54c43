// What the compression pulls of one stage come to: one value a cylinder, with the interval it lies in. In psi.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toPressure } from '../units/convert.ts'
import type { Pressure } from '../units/quantity.ts'
import { median, rangeOf, tidy } from './middle.ts'
import { intervalOf, pressureBounds } from './uncertainty.ts'
import { byCylinder } from './verdict.ts'

export type CompressionValue = {
  cylinder: number
  /** Middle of the valid dry pulls, psi. */
  dry?: number
  /** Half a division or half the range of the dry pulls, whichever is more, with the tester's accuracy class, psi. */
  plusMinus: number
  /** The same without the class, which two cylinders on one tester share: for comparing them, psi. */
  between: number
  /** Half a scale division of the coarsest tester used on it, psi. */
  read: number
  /** Ids of the testers that its dry pulls name, in order of id. */
  testers: string[]
  /** Greatest difference between dry pulls of this cylinder, psi. */
  range: number
  /** Middle of the first puffs of the dry pulls, psi. */
  firstPuff?: number
  /** Middle final of the dry pulls whose first puff was noted, psi. */
  finalOfPuffed?: number
  /** Middle of the valid wet pulls, psi. */
  wet?: number
  /** Oil of the wet pulls, where they agree on it, millilitres. */
  oil?: number
  /** Largest hose volume of the testers named, millilitres. */
  hose?: number
  /** Valid dry pulls, psi, rising. */
  finals: number[]
  /** How many valid dry pulls. */
  pulls: number
}

export type Measured = CompressionValue & { dry: number }
export const isMeasured = (value: CompressionValue): value is Measured => value.dry !== undefined

export const inPsi = (quantity: Pressure): number => tidy(toPressure(quantity, 'psi'))

/** One value a cylinder that has valid pulls, by cylinder number. */
export function compressionValues(job: Job, stage: Stage): CompressionValue[] {
  const pulls = validPulls(job, 'compression', stage)
  return [...new Set(pulls.map(pull => pull.cylinder))]
    .map(cylinder =>
      valueOf(
        job,
        cylinder,
        pulls.filter(pull => pull.cylinder === cylinder),
      ),
    )
    .toSorted(byCylinder)
}

function valueOf(job: Job, cylinder: number, pulls: readonly PullOf<'compression'>[]): CompressionValue {
  const dryPulls = pulls.filter(pull => pull.entry.wet !== true)
  const dry = dryPulls.map(pull => pull.entry)
  const bounds = pulls.map(pull => pressureBounds(job, pull.instrument))
  const read = tidy(Math.max(...bounds.map(one => one.read)))
  const byClass = Math.max(...bounds.map(one => one.byClass))
  const finals = dry.map(entry => inPsi(entry.final)).toSorted((a, b) => a - b)
  const puffed = dry.flatMap(({ firstPuff, final }) =>
    firstPuff ? [{ first: inPsi(firstPuff), final: inPsi(final) }] : [],
  )
  const wetEntries = pulls.map(pull => pull.entry).filter(entry => entry.wet === true)
  const wet = wetEntries.map(entry => inPsi(entry.final))
  const oils = new Set(wetEntries.map(entry => entry.oilMillilitres))
  const [oil] = oils
  const hose = Math.max(-1, ...dryPulls.map(pull => hoseOf(job, pull.instrument)))
  const range = rangeOf(finals)
  // Pulls that differ by less than a division differ by how they were read: the larger of the two, not both.
  const between = Math.max(read, range / 2)
  return {
    cylinder,
    finals,
    pulls: finals.length,
    range,
    plusMinus: byClass === 0 ? between : tidy(intervalOf([between, byClass])),
    between,
    read,
    testers: [
      ...new Set(dryPulls.flatMap(({ instrument }) => (instrument === undefined ? [] : [instrument]))),
    ].toSorted(),
    ...(finals.length > 0 ? { dry: median(finals) } : {}),
    ...(puffed.length > 0
      ? {
          firstPuff: median(puffed.map(one => one.first)),
          finalOfPuffed: median(puffed.map(one => one.final)),
        }
      : {}),
    ...(wet.length > 0 ? { wet: median(wet) } : {}),
    ...(oils.size === 1 && oil !== undefined ? { oil } : {}),
    ...(hose >= 0 ? { hose } : {}),
  }
}

const hoseOf = ({ instruments }: Pick<Job, 'instruments'>, id: string | undefined): number =>
  instruments?.find(one => one.id === id)?.hoseMillilitres ?? -1

/** "middle of 148 psi and 150 psi" or "one pull". */
export const basisOf = (value: CompressionValue, words: (psi: number) => string): string =>
  value.pulls === 1 ? 'one pull' : `middle of ${value.finals.map(words).join(', ')}`

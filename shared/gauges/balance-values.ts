// What the cut-outs of one stage come to: how much speed and vacuum each cylinder's loss costs the engine.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toVacuum } from '../units/convert.ts'
import type { Vacuum } from '../units/quantity.ts'
import { readingError } from './calling.ts'
import { median, rangeOf, tidy } from './middle.ts'
import { byCylinder } from './verdict.ts'

export type BalanceValue = {
  cylinder: number
  /** Middle loss of speed over the valid cut-outs, rpm. */
  drop: number
  /** Reading error of a difference, or half the range of the drops where that is more, rpm. */
  plusMinus: number
  /** Greatest difference between the drops of this cylinder, rpm. */
  range: number
  /** Middle loss of vacuum, inHg, where it was read. */
  vacuumDrop?: number
  vacuumPlusMinus?: number
  /** Valid cut-outs. */
  cuts: number
}

/** Two readings make a drop, each with its own error. */
export const dropError = {
  rpm: Math.hypot(readingError.rpm, readingError.rpm),
  inHg: Math.hypot(readingError.inHg, readingError.inHg),
} as const

const inHg = (quantity: Vacuum): number => tidy(toVacuum(quantity, 'inHg'))

/** One value a cylinder that was cut out, by cylinder number. */
export function balanceValues(job: Job, stage: Stage): BalanceValue[] {
  const pulls = validPulls(job, 'balance', stage)
  return [...new Set(pulls.map(pull => pull.cylinder))]
    .map(cylinder => {
      const entries = pulls.filter(pull => pull.cylinder === cylinder).map(pull => pull.entry)
      const drops = entries.map(entry => tidy(entry.rpmBefore - entry.rpmAfter))
      const vacuum = entries.flatMap(({ vacuumBefore, vacuumAfter }) =>
        vacuumBefore && vacuumAfter ? [tidy(inHg(vacuumBefore) - inHg(vacuumAfter))] : [],
      )
      return {
        cylinder,
        cuts: entries.length,
        drop: median(drops),
        range: rangeOf(drops),
        plusMinus: Math.max(dropError.rpm, rangeOf(drops) / 2),
        ...(vacuum.length > 0
          ? { vacuumDrop: median(vacuum), vacuumPlusMinus: Math.max(dropError.inHg, rangeOf(vacuum) / 2) }
          : {}),
      }
    })
    .toSorted(byCylinder)
}

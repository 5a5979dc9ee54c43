// What the cut-outs of one stage come to: how much speed and vacuum each cylinder's loss costs the engine.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type Cut, speedCuts, vacuumCuts } from './balance-cuts.ts'
import { readingError } from './calling.ts'
import { median, rangeOf, tidy } from './middle.ts'
import { byCylinder } from './verdict.ts'

export type BalanceValue = {
  cylinder: number
  /** Middle loss of speed over the valid cut-outs, rpm, drift of the baseline removed where a line fits it. */
  drop: number
  /** The same from each cut-out's own baseline, as the readings stand. */
  ownDrop: number
  /** Error of a reading and of its baseline, or half the range of the drops where that is more, rpm. */
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
export const dropError = { rpm: Math.hypot(readingError.rpm, readingError.rpm) } as const

/** One value a cylinder that was cut out, by cylinder number. */
export function balanceValues(job: Job, stage: Stage): BalanceValue[] {
  const speed = speedCuts(job, stage).cuts
  const vacuum = vacuumCuts(job, stage).cuts
  return [...new Set(speed.map(one => one.cylinder))]
    .map(cylinder => {
      const ofIt = speed.filter(one => one.cylinder === cylinder)
      const { drop, plusMinus, range } = together(ofIt)
      const inVacuum = vacuum.filter(one => one.cylinder === cylinder)
      const lost = together(inVacuum)
      return {
        cylinder,
        cuts: ofIt.length,
        drop,
        ownDrop: median(ofIt.map(one => one.ownDrop)),
        range,
        plusMinus,
        ...(inVacuum.length > 0 ? { vacuumDrop: lost.drop, vacuumPlusMinus: lost.plusMinus } : {}),
      }
    })
    .toSorted(byCylinder)
}

/**
 * Repeats do not narrow the interval: what idle control and the catalyst's heat do to one cut they may do to all of them.
 */
function together(cuts: readonly Cut[]): { drop: number; plusMinus: number; range: number } {
  const drops = cuts.map(cut => cut.drop)
  return {
    drop: median(drops),
    plusMinus: tidy(Math.max(median(cuts.map(cut => cut.plusMinus)), rangeOf(drops) / 2)),
    range: rangeOf(drops),
  }
}

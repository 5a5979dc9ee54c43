// Cylinder balance: what engine speed and vacuum lose when a cylinder is cut out, against its mates.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toVacuum } from '../units/convert.ts'
import { byCylinder, commonPractice, type GaugeVerdict, median, type Verdict } from './verdict.ts'

export type BalanceValue = {
  cylinder: number
  /** Middle loss of speed over the valid cut-outs, rpm. */
  drop: number
  /** Middle loss of vacuum, inHg, where it was read. */
  vacuumDrop?: number
  cuts: number
}

export const balanceRules = {
  /** Below this share of the other cylinders' middle drop a cylinder does no work, little work, or less than its share. */
  deadShare: 10,
  weakShare: 50,
  watchShare: 70,
  /** Reading error of one drop, from a tachometer read to 10 rpm before and after. */
  readingRpm: 14,
  /** A middle drop below this says that idle control hides the cut-outs. */
  masked: 20,
} as const

export function balanceValues(job: Job, stage: Stage): BalanceValue[] {
  const pulls = validPulls(job, 'balance', stage)
  return [...new Set(pulls.map(pull => pull.cylinder))]
    .map(cylinder => {
      const mine = pulls.filter(pull => pull.cylinder === cylinder)
      const vacuum = mine.flatMap(({ entry }) =>
        entry.vacuumBefore && entry.vacuumAfter
          ? [toVacuum(entry.vacuumBefore, 'inHg') - toVacuum(entry.vacuumAfter, 'inHg')]
          : [],
      )
      return {
        cylinder,
        cuts: mine.length,
        drop: median(mine.map(({ entry }) => entry.rpmBefore - entry.rpmAfter)),
        ...(vacuum.length > 0 ? { vacuumDrop: median(vacuum) } : {}),
      }
    })
    .toSorted(byCylinder)
}

const limit = `a drop of at least ${balanceRules.watchShare} % of the other cylinders' middle drop; none at all is a dead cylinder`

/** One verdict a cylinder once at least two were cut out. */
export function judgeBalance(job: Job, stage: Stage): GaugeVerdict[] {
  const values = balanceValues(job, stage)
  if (values.length < 2) return []
  return values.map(one => {
    const others = median(values.filter(other => other !== one).map(other => other.drop))
    const base = { test: 'balance', rule: 'drop when cut out', cylinder: one.cylinder, stage } as const
    const vacuum = one.vacuumDrop === undefined ? '' : ` Vacuum fell ${one.vacuumDrop.toFixed(1)} inHg.`
    const common = {
      ...base,
      value: one.drop,
      plusMinus: balanceRules.readingRpm,
      unit: 'rpm',
      limit,
      source: commonPractice,
    }
    if (others < balanceRules.masked && one.drop < balanceRules.masked)
      return {
        ...common,
        verdict: 'cannot be called',
        why: `The other cylinders drop only ${Math.round(others)} rpm in the middle: idle control may be making up for each cut. Fix idle air or raise the idle and repeat.${vacuum}`,
      }
    const share = (one.drop / others) * 100
    const uncertain = (balanceRules.readingRpm / others) * 100
    const { verdict, words } = called(share, uncertain)
    return {
      ...common,
      verdict,
      why: `Drops ${Math.round(one.drop)} rpm, ${Math.round(share)} % of the others' middle ${Math.round(others)} rpm: ${words}${vacuum}`,
    }
  })
}

function called(share: number, uncertain: number): { verdict: Verdict; words: string } {
  if (share <= balanceRules.deadShare) return { verdict: 'outside', words: 'it does no work.' }
  if (share + uncertain < balanceRules.weakShare) return { verdict: 'outside', words: 'it is weak.' }
  if (share - uncertain >= balanceRules.watchShare) return { verdict: 'within', words: 'it does its share.' }
  if (share - uncertain < balanceRules.weakShare && share < balanceRules.watchShare)
    return { verdict: 'cannot be called', words: 'weak or nearly so; repeat the cut-out to tell.' }
  if (share < balanceRules.watchShare) return { verdict: 'watch', words: 'it does less than its share.' }
  return { verdict: 'within', words: 'it does its share, as near as the tachometer can tell.' }
}

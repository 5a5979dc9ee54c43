// Cylinder balance: what engine speed and vacuum lose when a cylinder is cut out, against the middle loss of the others.
import { cylindersOf } from '../engine/relations.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { balanceRules, callShare, type Drop } from './balance-share.ts'
import { type BalanceValue, balanceValues, dropError } from './balance-values.ts'
import { tidy } from './middle.ts'
import {
  percentWords,
  round,
  rpmWords,
  type ShownUnits,
  tradeUnits,
  vacuumShown,
  vacuumWords,
} from './shown.ts'
import { sources } from './sources.ts'
import { byCylinder, type CylinderVerdict } from './verdict.ts'

const limit = `at least ${percentWords(balanceRules.weakShare)} of the others' middle drop, which is our figure; no drop at all is a dead cylinder`

/** Verdicts by cylinder once at least two were cut out; before that only what the readings themselves show. */
export function judgeBalance(job: Job, stage: Stage, units: ShownUnits = tradeUnits): CylinderVerdict[] {
  const here = new Set(cylindersOf(job.layout))
  const values = balanceValues(job, stage).filter(one => here.has(one.cylinder))
  const speed = speedDrops(values, stage)
  const vacuum = vacuumDrops(values, stage, units)
  return [
    ...speed.map(one => unlessDenied(one, vacuum, 'vacuum')),
    ...vacuum.map(one => unlessDenied(one, speed, 'engine speed')),
    ...values.flatMap(one => repeats(one, stage)),
  ].toSorted(byCylinder)
}

function speedDrops(values: readonly BalanceValue[], stage: Stage): CylinderVerdict[] {
  const drops = values.map(({ cylinder, drop, plusMinus }) => ({ cylinder, drop, plusMinus }))
  return drops.map(one => ({
    test: 'balance',
    rule: 'speed drop',
    cylinder: one.cylinder,
    stage,
    value: round(one.drop),
    plusMinus: round(one.plusMinus, 0),
    unit: 'rpm',
    limit,
    source: sources.balance,
    ...called(one, drops, rpmWords),
  }))
}

function vacuumDrops(values: readonly BalanceValue[], stage: Stage, units: ShownUnits): CylinderVerdict[] {
  const drops = values.flatMap(({ cylinder, vacuumDrop, vacuumPlusMinus }) =>
    vacuumDrop === undefined || vacuumPlusMinus === undefined
      ? []
      : [{ cylinder, drop: vacuumDrop, plusMinus: vacuumPlusMinus }],
  )
  return drops.map(one => ({
    test: 'balance',
    rule: 'vacuum drop',
    cylinder: one.cylinder,
    stage,
    ...vacuumShown(one.drop, units),
    plusMinus: vacuumShown(one.plusMinus, units).value,
    limit,
    source: sources.balance,
    ...called(one, drops, drop => vacuumWords(drop, units)),
  }))
}

function called(
  one: Drop,
  drops: readonly Drop[],
  say: (drop: number) => string,
): Pick<CylinderVerdict, 'verdict' | 'why'> {
  const others = drops.filter(other => other !== one)
  if (others.length === 0)
    return {
      verdict: 'noted',
      why: `Drops ${say(one.drop)}; cut out the others too, there is nothing to compare with.`,
    }
  const { verdict, words } = callShare(one, others, say)
  return { verdict, why: `Drops ${say(one.drop)}: ${words}` }
}

/** Idle control can hold the speed or the vacuum, not both: where the other clearly drops, this one settles nothing. */
function unlessDenied(
  one: CylinderVerdict,
  others: readonly CylinderVerdict[],
  name: string,
): CylinderVerdict {
  const denied = others.some(other => other.cylinder === one.cylinder && other.verdict === 'within')
  return one.verdict === 'outside' && denied
    ? {
        ...one,
        verdict: 'cannot be called',
        why: `${one.why} But the ${name} drops as it should: idle control may be making up for the cut. Fix idle air and repeat.`,
      }
    : one
}

function repeats(one: BalanceValue, stage: Stage): CylinderVerdict[] {
  if (one.cuts < 2) return []
  const most = Math.hypot(dropError.rpm, dropError.rpm)
  const apart = tidy(one.range) > tidy(most)
  return [
    {
      test: 'balance',
      rule: 'repeat',
      cylinder: one.cylinder,
      stage,
      value: round(one.range),
      unit: 'rpm',
      verdict: apart ? 'watch' : 'within',
      limit: `drops of one cylinder within ${rpmWords(most)}, as near as speed can be read`,
      why: apart
        ? 'The cut-outs of this cylinder do not repeat: let the engine recover between cuts and repeat.'
        : `${one.cuts} cut-outs agree.`,
      source: sources.practice,
      about: 'reading',
    },
  ]
}

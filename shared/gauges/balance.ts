// Cylinder balance: what engine speed and vacuum lose when a cylinder is cut out, against the middle loss of the others.
import { cylindersOf } from '../engine/relations.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { doubtedSpeed, idleControlOf, recoveryDoubt } from './balance-idle-control.ts'
import { judgeAgreement, judgeRepeats } from './balance-readings.ts'
import { balanceRules, callShare, type Drop, type Share, shareOf } from './balance-share.ts'
import { type BalanceValue, balanceValues } from './balance-values.ts'
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
  const control = idleControlOf(job, stage)
  const speed = speedDrops(values, stage, recoveryDoubt[control])
  const vacuum = vacuumDrops(values, stage, units)
  const shares = balanceShares(job, stage)
  return [
    ...speed.map(one =>
      doubtedSpeed(unlessDenied(one, vacuum, 'vacuum'), control, {
        cuts: values.find(value => value.cylinder === one.cylinder)?.cuts ?? 0,
        vacuumAgrees: vacuum.some(other => other.cylinder === one.cylinder && other.verdict === 'outside'),
      }),
    ),
    ...vacuum.map(one => unlessDenied(one, speed, 'engine speed')),
    ...shares.flatMap(one => judgeAgreement(one.cylinder, stage, one.speed, one.vacuum)),
    ...values.flatMap(one => judgeRepeats(one, stage)),
  ].toSorted(byCylinder)
}

/** What each cylinder's work is of the others' middle one, in percent with its interval, by speed and by vacuum. */
export function balanceShares(job: Job, stage: Stage): { cylinder: number; speed?: Share; vacuum?: Share }[] {
  const here = new Set(cylindersOf(job.layout))
  const values = balanceValues(job, stage).filter(one => here.has(one.cylinder))
  const recovery = recoveryDoubt[idleControlOf(job, stage)]
  const share = (drops: readonly Drop[], cylinder: number, doubt: number) => {
    const one = drops.find(drop => drop.cylinder === cylinder)
    return (
      one &&
      shareOf(
        one,
        drops.filter(other => other !== one),
        doubt,
      )
    )
  }
  return values.map(({ cylinder }) => {
    const speed = share(bySpeed(values), cylinder, recovery)
    const vacuum = share(byVacuum(values), cylinder, 0)
    return { cylinder, ...(speed ? { speed } : {}), ...(vacuum ? { vacuum } : {}) }
  })
}

const bySpeed = (values: readonly BalanceValue[]): Drop[] =>
  values.map(({ cylinder, drop, plusMinus }) => ({ cylinder, drop, plusMinus }))

const byVacuum = (values: readonly BalanceValue[]): Drop[] =>
  values.flatMap(({ cylinder, vacuumDrop, vacuumPlusMinus }) =>
    vacuumDrop === undefined || vacuumPlusMinus === undefined
      ? []
      : [{ cylinder, drop: vacuumDrop, plusMinus: vacuumPlusMinus }],
  )

function speedDrops(values: readonly BalanceValue[], stage: Stage, recovery: number): CylinderVerdict[] {
  const drops = bySpeed(values)
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
    ...called(one, drops, rpmWords, recovery, ownOf(values, one)),
  }))
}

const ownOf = (values: readonly BalanceValue[], { cylinder }: Drop): number | undefined =>
  values.find(value => value.cylinder === cylinder)?.ownDrop

function vacuumDrops(values: readonly BalanceValue[], stage: Stage, units: ShownUnits): CylinderVerdict[] {
  const drops = byVacuum(values)
  return drops.map(one => ({
    test: 'balance',
    rule: 'vacuum drop',
    cylinder: one.cylinder,
    stage,
    ...vacuumShown(one.drop, units),
    plusMinus: vacuumShown(one.plusMinus, units).value,
    limit,
    source: sources.balance,
    ...called(one, drops, drop => vacuumWords(drop, units), 0),
  }))
}

function called(
  one: Drop,
  drops: readonly Drop[],
  say: (drop: number) => string,
  recovery: number,
  own = one.drop,
): Pick<CylinderVerdict, 'verdict' | 'why'> {
  const others = drops.filter(other => other !== one)
  if (others.length === 0)
    return {
      verdict: 'noted',
      why: `Drops ${say(one.drop)}; cut out the others too, there is nothing to compare with.`,
    }
  const { verdict, words } = callShare(one, others, say, recovery)
  const fromLine =
    say(own) === say(one.drop)
      ? ''
      : ` From its own baseline alone it drops ${say(own)}; judged is the drop from the line through all baselines.`
  return { verdict, why: `Drops ${say(one.drop)}: ${words}${fromLine}` }
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

// What the readings of a round of cut-outs say of themselves: does the baseline creep, do repeats agree, do speed and
// vacuum tell the same.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type Cuts, speedCuts, vacuumCuts } from './balance-cuts.ts'
import { fewestForDrift } from './balance-drift.ts'
import type { Share } from './balance-share.ts'
import { type BalanceValue, dropError } from './balance-values.ts'
import { rangeOf, tidy } from './middle.ts'
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
import type { CylinderVerdict, GaugeVerdict } from './verdict.ts'

const driftSource = 'common practice; the line is the middle of the slopes of all pairs (Theil-Sen)'

type Scale = {
  name: string
  say: (value: number) => string
  shown: (value: number) => { value: number; unit: string }
}

/** Whether the engine stood still between the cuts; at most one verdict for speed and one for vacuum. */
export function judgeBaseline(job: Job, stage: Stage, units: ShownUnits = tradeUnits): GaugeVerdict[] {
  const speed: Scale = {
    name: 'speed',
    say: rpmWords,
    shown: value => ({ value: round(value), unit: 'rpm' }),
  }
  const vacuum: Scale = {
    name: 'vacuum',
    say: value => vacuumWords(value, units),
    shown: value => vacuumShown(value, units),
  }
  return [
    ...baseline(speedCuts(job, stage), speed, stage),
    ...baseline(vacuumCuts(job, stage), vacuum, stage),
  ]
}

function baseline({ baselines, drift }: Cuts, { name, say, shown }: Scale, stage: Stage): GaugeVerdict[] {
  const range = rangeOf(baselines.map(one => one.value))
  const moved = tidy(range) > tidy(2 * drift.wander)
  const base = {
    test: 'balance',
    rule: `baseline ${name}`,
    stage,
    limit: `the same before every cut, or changing evenly from cut to cut`,
    source: driftSource,
    about: 'reading',
  } as const
  if (drift.kind === 'none') {
    if (drift.because === 'too few' && !moved) return []
    return [
      {
        ...base,
        ...shown(range),
        verdict: drift.because === 'too few' ? 'noted' : 'watch',
        why:
          drift.because === 'too few'
            ? `The baseline moved by ${say(range)}, and there are fewer than ${fewestForDrift} moments to see a drift by: it could not be removed, each drop is taken from its own baseline. Another round would show it.`
            : `The baseline moved by ${say(range)} without an even trend, so drift could not be removed and each drop is taken from its own baseline. Let the engine settle, fix idle air, and repeat.`,
      },
    ]
  }
  const places = baselines.map(one => one.at)
  const crept = tidy(Math.abs(drift.perCut) * (Math.max(...places) - Math.min(...places)))
  const stray =
    drift.strays === 0
      ? ''
      : ` ${drift.strays === 1 ? 'One baseline stands' : `${drift.strays} baselines stand`} far off the line: look whether it was misread.`
  const steady = crept <= tidy(drift.wander)
  const hunts = drift.hunts
    ? ` It hunts by ${say(drift.wander)} either way, which makes every drop less sure.`
    : ''
  return [
    {
      ...base,
      ...shown(drift.perCut),
      verdict: drift.strays > 0 || drift.hunts ? 'watch' : steady ? 'within' : 'noted',
      why: steady
        ? `The baseline ${drift.hunts ? 'has no trend' : 'stood still as near as it can be read'}.${hunts}${stray}`
        : `The baseline ${drift.perCut > 0 ? 'rose' : 'fell'} evenly, by ${say(crept)} over the cuts, as an engine that warms or an idle control that creeps does. That is removed from the drops by a line.${hunts}${stray}`,
    },
  ]
}

/** Nothing for a cylinder that was cut once. */
export function judgeRepeats(one: BalanceValue, stage: Stage): CylinderVerdict[] {
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

/** A flag only where the two shares of one cylinder cannot both be right. */
export function judgeAgreement(
  cylinder: number,
  stage: Stage,
  speed: Share | undefined,
  vacuum: Share | undefined,
): CylinderVerdict[] {
  if (!speed || !vacuum) return []
  const apart = speed.percent - vacuum.percent
  const doubt = Math.hypot(speed.plusMinus, vacuum.plusMinus)
  if (tidy(Math.abs(apart)) <= tidy(doubt)) return []
  return [
    {
      test: 'balance',
      rule: 'speed against vacuum',
      cylinder,
      stage,
      value: round(Math.abs(apart), 0),
      plusMinus: round(doubt, 0),
      unit: '%',
      verdict: 'watch',
      limit: 'the same share of work by speed and by vacuum, within the error of both',
      why: `By speed it does ${percentWords(speed.percent)} of the others' work, by vacuum ${percentWords(vacuum.percent)}: ${
        apart < 0
          ? 'idle control may have brought the speed back before it was read.'
          : 'the vacuum was read too early or the gauge is damped.'
      } Repeat with idle air fixed and read both at the same moment.`,
      source: sources.practice,
      about: 'reading',
    },
  ]
}

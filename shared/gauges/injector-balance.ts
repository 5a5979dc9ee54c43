// Injector balance: the rail pressure that each injector takes off in one timed pulse, against the average of all.
import { cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMaximum, settle } from './calling.ts'
import { differenceInterval, fuelPsi } from './fuel-reading.ts'
import type { Gauge } from './gauge.ts'
import { median, rangeOf, tidy } from './middle.ts'
import { type RuleSet, ruleSet } from './rule-sets.ts'
import { pressureShown, pressureWords, type ShownUnits, tradeUnits } from './shown.ts'
import { byCylinder, type CylinderVerdict, type GaugeVerdict } from './verdict.ts'

/** Middle drop of one injector, psi. */
type Drop = { cylinder: number; drop: number; plusMinus: number; before: number }

type Setting = { stage: Stage; units: ShownUnits; rule: RuleSet<'injectorBalance'>; missing: number }

/** By cylinder; a larger drop is rich, a smaller lean. One injector alone is only noted. */
export function judgeInjectorBalance(job: Job, stage: Stage, units: ShownUnits = tradeUnits): GaugeVerdict[] {
  const cylinders = cylindersOf(job.layout)
  const drops = cylinders.flatMap(cylinder => dropOf(cylinder, job, stage)).toSorted(byCylinder)
  const real = drops.filter(one => one.drop >= 0)
  const setting = {
    stage,
    units,
    rule: ruleSet('injectorBalance', job),
    missing: cylinders.length - real.length,
  }
  return [
    ...unevenStart(real, setting),
    ...drops.map(one => (one.drop < 0 ? rising(one, setting) : called(one, real, setting))),
  ]
}

function dropOf(cylinder: number, job: Job, stage: Stage): Drop[] {
  const pulls = validPulls(job, 'injector balance', stage).filter(pull => pull.cylinder === cylinder)
  if (pulls.length === 0) return []
  const drops = pulls.map(({ entry }) => tidy(fuelPsi(entry.before) - fuelPsi(entry.after)))
  return [
    {
      cylinder,
      drop: median(drops),
      before: median(pulls.map(({ entry }) => fuelPsi(entry.before))),
      plusMinus: Math.max(...pulls.map(pull => differenceInterval(job, pull.instrument)), rangeOf(drops) / 2),
    },
  ]
}

const base = ({ cylinder }: Drop, { stage }: Setting) =>
  ({ test: 'injector balance', rule: 'drop against the average', cylinder, stage }) as const

function called(one: Drop, drops: readonly Drop[], setting: Setting): CylinderVerdict {
  const { units, rule, missing } = setting
  const words = (psi: number) => pressureWords(psi, units)
  const most = fuelPsi({ value: rule.kPa, unit: 'kPa' })
  const limit = `within ${words(most)} of the average drop`
  const others = drops.filter(other => other.cylinder !== one.cylinder)
  if (others.length === 0)
    return {
      ...base(one, setting),
      ...pressureShown(one.drop, units),
      plusMinus: pressureShown(one.plusMinus, units).value,
      verdict: 'noted',
      limit,
      why: `Drops ${words(one.drop)}; pulse the others too, there is nothing to compare with.`,
      source: rule.source,
    }
  // Summed by size, so that the last digits do not hang on which cylinder is which.
  const bySize = drops.map(other => other.drop).toSorted((a, b) => a - b)
  const average = bySize.reduce((sum, drop) => sum + drop, 0) / drops.length
  const apart = tidy(one.drop - average)
  // Its own reading is part of the average, so less of its error is left in the difference.
  const doubt = one.plusMinus * Math.sqrt(1 - 1 / drops.length)
  const call = againstMaximum(Math.abs(apart), doubt, most)
  const middle = median(others.map(other => other.drop))
  const pulled = call === 'outside' && Math.abs(one.drop - middle) <= most
  const verdict = pulled ? 'cannot be called' : call
  const side =
    apart > 0 ? 'larger: rich, it gives more fuel than its sisters' : 'smaller: lean, it gives less'
  return {
    ...base(one, setting),
    ...pressureShown(apart, units),
    plusMinus: pressureShown(doubt, units).value,
    verdict,
    limit,
    why: `Drops ${words(one.drop)} against an average of ${words(average)}${
      pulled
        ? `, but as its sisters do in the middle (${words(middle)}): another injector pulls the average. Settle that one first.`
        : call === 'outside'
          ? `, ${side}. Make sure of spark and compression first; then clean or change it, and repeat.`
          : `.${settle(verdict)}`
    }${missing > 0 ? ` ${missing} not measured: the average is of the rest.` : ''}`,
    source: rule.source,
  }
}

const rising = (one: Drop, setting: Setting): CylinderVerdict => ({
  ...base(one, setting),
  ...pressureShown(one.drop, setting.units),
  verdict: 'noted',
  limit: 'pressure falls when an injector opens',
  why: 'The pressure rose: before and after are swapped, or the pump ran. Left out of the average.',
  source: 'common practice',
  about: 'reading',
})

/** Drops compare only when every pulse starts from the same pressure; 5 percent is our figure. */
function unevenStart(drops: readonly Drop[], { stage, units }: Setting): GaugeVerdict[] {
  const range = rangeOf(drops.map(one => one.before))
  const usual = median(drops.map(one => one.before))
  if (drops.length < 2 || range <= 0.05 * usual) return []
  return [
    {
      test: 'injector balance',
      rule: 'starting pressure',
      stage,
      ...pressureShown(range, units),
      verdict: 'watch',
      limit: 'every pulse from the same pressure, within 5 % (our figure)',
      why: 'The pulses started from different pressures: let the pump build up the same one before each.',
      source: 'common practice',
      about: 'reading',
    },
  ]
}

export const injectorBalanceGauge: Gauge = {
  test: 'injector balance',
  title: 'Injector balance',
  cautions: [
    'Relieve the pressure first; wrap the fitting with a shop towel, what is left sprays. Ventilate, no flame or spark near.',
    'Each pulse puts fuel into a cylinder: once each, and do not repeat without running the engine, or it floods.',
    'Direct injection rails hold thousands of psi: not with this gauge.',
  ],
  steps: [
    'Coolant below 94 °C: heat soak spoils it.',
    'Pump up to the same pressure before every pulse; note it, pulse once for the fixed time, note the pressure at once.',
    'Every injector once, then run the engine before any repeat.',
    'Two limits were published by one maker, 10 and 20 kPa from the average: choose under Rules, or type what the service information says.',
  ],
  judge: judgeInjectorBalance,
}

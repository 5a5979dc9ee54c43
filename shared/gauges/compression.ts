// Cranking compression: cylinders against each other, first puff against final, dry beside wet.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toPressure } from '../units/convert.ts'
import type { Pressure } from '../units/quantity.ts'
import {
  againstMaximum,
  againstMinimum,
  byCylinder,
  commonPractice,
  type GaugeVerdict,
  median,
  settle,
} from './verdict.ts'

export type CompressionValue = {
  cylinder: number
  /** Middle of the valid dry pulls, psi. */
  dry?: number
  /** Half a scale division, or half the range of the pulls where that is more, psi. */
  plusMinus: number
  /** Greatest difference between dry pulls of this cylinder, psi. */
  range: number
  firstPuff?: number
  wet?: number
  pulls: number
}

export const compressionRules = {
  /** Between highest and lowest. */
  spreadPsi: 20,
  shareOfHighest: 75,
  firstPuffShare: 70,
  repeatPsi: 5,
  /** Common gauge: 5 psi divisions, read to half of one. */
  readingPsi: 2.5,
  /** A rise below this with oil in the cylinder says little either way. */
  wetRisePercent: 10,
} as const

const shareSource =
  'US Army TM 5-4210-230-14&P-1 addendum 2, and vehicle makers (Ford 2010 component test pages, Mazda 2008)'
const psi = (quantity: Pressure): number => toPressure(quantity, 'psi')
const round = (value: number, digits = 0): number => Number(value.toFixed(digits))

/** One value a cylinder that has valid pulls, by cylinder number. */
export function compressionValues(job: Job, stage: Stage): CompressionValue[] {
  const pulls = validPulls(job, 'compression', stage)
  return [...new Set(pulls.map(pull => pull.cylinder))]
    .map(cylinder => {
      const mine = pulls.filter(pull => pull.cylinder === cylinder)
      const dry = mine.filter(pull => !pull.entry.wet)
      const finals = dry.map(pull => psi(pull.entry.final))
      const first = dry.flatMap(pull => (pull.entry.firstPuff ? [psi(pull.entry.firstPuff)] : []))
      const wet = mine.filter(pull => pull.entry.wet).map(pull => psi(pull.entry.final))
      const range = finals.length > 1 ? Math.max(...finals) - Math.min(...finals) : 0
      return {
        cylinder,
        pulls: finals.length,
        range,
        plusMinus: Math.max(compressionRules.readingPsi, range / 2),
        ...(finals.length > 0 ? { dry: median(finals) } : {}),
        ...(first.length > 0 ? { firstPuff: median(first) } : {}),
        ...(wet.length > 0 ? { wet: median(wet) } : {}),
      }
    })
    .toSorted(byCylinder)
}

type Measured = CompressionValue & { dry: number }
const isMeasured = (value: CompressionValue): value is Measured => value.dry !== undefined

/** All verdicts that the compression pulls of one stage allow. Values in psi and percent. */
export function judgeCompression(job: Job, stage: Stage): GaugeVerdict[] {
  const measured = compressionValues(job, stage).filter(isMeasured)
  const highest = measured.toSorted((a, b) => b.dry - a.dry)[0]
  const lowest = measured.toSorted((a, b) => a.dry - b.dry)[0]
  if (!highest || !lowest) return []
  const base = { test: 'compression', stage } as const
  const specification = job.circumstances.compressionSpecification
  const verdicts: GaugeVerdict[] = []

  if (measured.length > 1) {
    const maximum = specification?.maximumSpread
      ? psi(specification.maximumSpread)
      : compressionRules.spreadPsi
    const spread = highest.dry - lowest.dry
    const plusMinus = Math.hypot(highest.plusMinus, lowest.plusMinus)
    const verdict = againstMaximum(spread, plusMinus, maximum)
    verdicts.push({
      ...base,
      rule: 'spread',
      value: round(spread, 1),
      plusMinus: round(plusMinus, 1),
      unit: 'psi',
      verdict,
      limit: `at most ${round(maximum, 1)} psi between highest and lowest`,
      why: `Cylinder ${highest.cylinder} is highest with ${round(highest.dry)} psi, ${lowest.cylinder} lowest with ${round(lowest.dry)} psi.${settle(verdict)}`,
      source: specification?.maximumSpread ? 'specification typed for this vehicle' : commonPractice,
    })
  }
  for (const one of measured) {
    if (specification?.minimum) {
      const minimum = psi(specification.minimum)
      const verdict = againstMinimum(one.dry, one.plusMinus, minimum)
      verdicts.push({
        ...base,
        rule: 'specified minimum',
        cylinder: one.cylinder,
        value: round(one.dry, 1),
        plusMinus: round(one.plusMinus, 1),
        unit: 'psi',
        verdict,
        limit: `at least ${round(minimum, 1)} psi`,
        why: `The specification typed for this vehicle asks for ${round(minimum, 1)} psi.${settle(verdict)}`,
        source: 'specification typed for this vehicle',
      })
    }
    if (measured.length > 1) verdicts.push(shareOfHighest(one, highest, stage))
    if (one.firstPuff !== undefined) verdicts.push(firstPuff(one, one.firstPuff, stage))
    if (one.range > compressionRules.repeatPsi)
      verdicts.push({
        ...base,
        rule: 'repeat',
        cylinder: one.cylinder,
        value: round(one.range, 1),
        unit: 'psi',
        verdict: 'watch',
        limit: `pulls of one cylinder within ${compressionRules.repeatPsi} psi`,
        why: 'The pulls of this cylinder do not repeat: check adapter, gauge valve and battery, and pull again.',
        source: 'figure from memory, unchecked; repeat rule common practice',
      })
    if (one.wet !== undefined) verdicts.push(wetRise(one, one.wet, highest, stage))
  }
  return verdicts
}

function shareOfHighest(one: Measured, highest: Measured, stage: Stage): GaugeVerdict {
  const share = (one.dry / highest.dry) * 100
  const plusMinus =
    one === highest
      ? 0
      : 100 * Math.hypot(one.plusMinus / highest.dry, (one.dry * highest.plusMinus) / highest.dry ** 2)
  const verdict = againstMinimum(share, plusMinus, compressionRules.shareOfHighest)
  return {
    test: 'compression',
    stage,
    rule: 'share of highest',
    cylinder: one.cylinder,
    value: round(share, 1),
    plusMinus: round(plusMinus, 1),
    unit: '%',
    verdict,
    limit: `at least ${compressionRules.shareOfHighest} % of the highest cylinder`,
    why: `${round(one.dry)} psi against ${round(highest.dry)} psi in cylinder ${highest.cylinder}.${settle(verdict)}`,
    source: shareSource,
  }
}

function firstPuff(one: Measured, first: number, stage: Stage): GaugeVerdict {
  const share = (first / one.dry) * 100
  const plusMinus =
    100 * Math.hypot(compressionRules.readingPsi / one.dry, (first * one.plusMinus) / one.dry ** 2)
  const called = againstMinimum(share, plusMinus, compressionRules.firstPuffShare)
  return {
    test: 'compression',
    stage,
    rule: 'first puff',
    cylinder: one.cylinder,
    value: round(share, 1),
    plusMinus: round(plusMinus, 1),
    unit: '%',
    // A long hose lowers the first puff by itself, so this alone never condemns a cylinder.
    verdict: called === 'outside' ? 'watch' : called,
    limit: `at least ${compressionRules.firstPuffShare} % of final on the first puff; compare cylinders on one tester`,
    why: `First puff ${round(first)} psi, final ${round(one.dry)} psi.${settle(called)}`,
    source: commonPractice,
  }
}

function wetRise(one: Measured, wet: number, highest: Measured, stage: Stage): GaugeVerdict {
  const rise = ((wet - one.dry) / one.dry) * 100
  const low =
    one.dry / highest.dry < compressionRules.shareOfHighest / 100 ||
    highest.dry - one.dry > compressionRules.spreadPsi
  const meaning = !low
    ? 'This cylinder was not low, so it serves as a comparison for the low one.'
    : rise >= compressionRules.wetRisePercent
      ? 'A clear rise with oil points to rings, piston or bore.'
      : 'Oil does not help: valves, head gasket or head come first.'
  return {
    test: 'compression',
    stage,
    rule: 'wet rise',
    cylinder: one.cylinder,
    value: round(rise, 1),
    unit: '%',
    verdict: 'noted',
    limit:
      'no limit: oil takes up chamber space and lifts the reading by itself; compare with a good cylinder given the same oil',
    why: `Dry ${round(one.dry)} psi, wet ${round(wet)} psi. ${meaning}`,
    source: 'US Army TM 5-4210-230-14&P-1 addendum 2; oil volume: calculated',
  }
}

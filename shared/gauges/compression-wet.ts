// The wet pull: what oil on the piston does to a low cylinder, beside what it does to a good one.
import type { Layout } from '../engine/layout-schema.ts'
import type { Setting } from './compression-comparison.ts'
import { oilLiftPercent } from './compression-estimates.ts'
import type { Measured } from './compression-values.ts'
import { median } from './middle.ts'
import { inWords, percentWords, pressureWords, round } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

type Wet = Measured & { wet: number }
const hasWet = (one: Measured): one is Wet => one.wet !== undefined && one.dry > 0

const riseOf = (one: Wet): number => (100 * (one.wet - one.dry)) / one.dry
const doubtOf = (one: Wet): number =>
  100 * Math.hypot(one.read / one.dry, (one.wet * one.between) / one.dry ** 2)

/**
 * A wet rise separates rings from valves; it judges nothing by itself, so it is only noted. The oil takes up chamber
 * space and lifts every reading, hence the comparison with cylinders that were not low and got the same oil.
 */
export function wetRises(
  values: readonly Measured[],
  low: ReadonlySet<number>,
  arrangement: Layout['arrangement'],
  { stage, units }: Setting,
): CylinderVerdict[] {
  const wet = values.filter(hasWet)
  return wet.map(one => ({
    test: 'compression',
    rule: 'wet rise',
    cylinder: one.cylinder,
    stage,
    value: round(riseOf(one)),
    plusMinus: round(doubtOf(one)),
    unit: '%',
    verdict: 'noted',
    limit: `no limit: oil takes up chamber space and lifts any reading (${liftWords(one.oil)}); compare with a good cylinder given the same oil`,
    why: `Dry ${pressureWords(one.dry, units)}, wet ${pressureWords(one.wet, units)}. ${meaning(one, low, goodFor(one, wet, low), arrangement)}${otherOil(one, wet, low)}`,
    source: sources.wet,
  }))
}

/** Cylinders not low that got the same oil, or nobody said how much. */
const goodFor = (one: Wet, wet: readonly Wet[], low: ReadonlySet<number>): Wet[] =>
  wet.filter(
    other =>
      !low.has(other.cylinder) && (one.oil === undefined || other.oil === undefined || one.oil === other.oil),
  )

/** Says which good cylinders are left out of the comparison. */
function otherOil(one: Wet, wet: readonly Wet[], low: ReadonlySet<number>): string {
  if (!low.has(one.cylinder)) return ''
  const same = goodFor(one, wet, low)
  const left = wet.filter(other => !low.has(other.cylinder) && !same.includes(other))
  return left.length === 0
    ? ''
    : ` Cylinder ${inWords(left.map(other => other.cylinder))} got another amount of oil and is not compared.`
}

/** By its volume alone, in a small and in a large chamber; the usual spoon where no amount was noted. */
function liftWords(oil = 15): string {
  const [small, large] = [oilLiftPercent(44, 400, oil), oilLiftPercent(80, 720, oil)]
  const most = (percent: number | null) => (percent === null ? 'any amount' : percentWords(percent))
  return `${oil} ml by up to ${most(small)} in a 44 ml chamber, ${most(large)} in an 80 ml one: calculated`
}

/** What oil did to a low cylinder, beside what it did to good ones. */
type WetCall = 'reference' | 'no help' | 'helps, nothing to compare' | 'helps' | 'no more than a good one'

function callWet(one: Wet, low: ReadonlySet<number>, good: readonly Wet[]): WetCall {
  if (!low.has(one.cylinder)) return 'reference'
  const rise = riseOf(one)
  if (rise <= doubtOf(one)) return 'no help'
  if (good.length === 0) return 'helps, nothing to compare'
  const more = rise - median(good.map(riseOf))
  return more > Math.hypot(doubtOf(one), median(good.map(doubtOf))) ? 'helps' : 'no more than a good one'
}

/** Low cylinders that oil does not help: valves, gasket or head rather than rings. */
export function notHelpedByOil(values: readonly Measured[], low: ReadonlySet<number>): Set<number> {
  const wet = values.filter(hasWet)
  const unhelped = new Set<WetCall>(['no help', 'no more than a good one'])
  return new Set(
    wet.filter(one => unhelped.has(callWet(one, low, goodFor(one, wet, low)))).map(one => one.cylinder),
  )
}

function meaning(
  one: Wet,
  low: ReadonlySet<number>,
  good: readonly Wet[],
  arrangement: Layout['arrangement'],
): string {
  const lying =
    arrangement === 'inline'
      ? ''
      : ' In a bank that leans the oil lies unevenly, so a small rise proves little.'
  const others = (): string =>
    `Cylinder ${inWords(good.map(other => other.cylinder))}, not low, rose ${percentWords(median(good.map(riseOf)))} with the same oil`
  const call = callWet(one, low, good)
  if (call === 'reference') return 'It was not low dry, so its rise is what the oil itself does.'
  if (call === 'no help') return `Oil does not help: valves, head gasket or head before rings.${lying}`
  if (call === 'helps, nothing to compare')
    return 'It rises with oil, which points to rings, piston or bore, but the oil alone lifts the reading too: give a good cylinder the same oil and compare.'
  return call === 'helps'
    ? `${others()}; this one clearly more: rings, piston or bore.`
    : `${others()}; this one no more, so the oil's volume explains it: valves, head gasket or head before rings.${lying}`
}

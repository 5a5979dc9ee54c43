// What physics adds to a compression reading, always marked as an estimate: its equal at sea level, what a compression
// ratio makes plausible, and how much a spoon of oil lifts it by its volume alone.
import type { Stage } from '../job/tray-schema.ts'
import { toPressure } from '../units/convert.ts'
import { atmosphereOf, pressureRatio } from './atmosphere.ts'
import { againstMaximum } from './calling.ts'
import type { Setting } from './compression-comparison.ts'
import type { Measured } from './compression-values.ts'
import { pressureShown, pressureWords } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

const seaLevelPsi = toPressure({ value: 101.325, unit: 'kPa' }, 'psi')
/** Exponents of cranking with heat lost to the walls; from memory, unchecked. */
const exponent = { middle: 1.25, high: 1.35 } as const

/** Gauge pressure of a polytropic compression, psi. Source: p2 = p1 r^n, textbook thermodynamics. */
export const polytropicPsi = (ratio: number, airPsi: number, n: number): number => airPsi * (ratio ** n - 1)

/** The public rule of thumb, ratio times air pressure, plus air pressure, plus 5 psi; far below the polytropic value. */
export const thumbPsi = (ratio: number, airPsi: number): number => ratio * airPsi + airPsi + 5

/**
 * Most that oil can lift a reading by taking up chamber space, percent: as if all of it stayed on the piston. Volumes in
 * millilitres; null when it would fill the chamber.
 */
export function oilLiftPercent(clearance: number, swept: number, oil: number): number | null {
  if (oil >= clearance) return null
  const dry = polytropicPsi((swept + clearance) / clearance, 1, exponent.middle)
  const wet = polytropicPsi((swept + clearance - oil) / (clearance - oil), 1, exponent.middle)
  return 100 * (wet / dry - 1)
}

/** One noted verdict a cylinder, where the air is known and thinner or thicker than at sea level. */
export function seaLevelEquals(
  values: readonly Measured[],
  { stage, units, circumstances }: Setting,
): CylinderVerdict[] {
  const ratio = pressureRatio(atmosphereOf(circumstances))
  if (ratio <= 0 || Math.abs(ratio - 1) < 0.01) return []
  return values.map(one => ({
    test: 'compression',
    rule: 'equal at sea level',
    cylinder: one.cylinder,
    stage,
    ...pressureShown(one.dry / ratio, units),
    plusMinus: pressureShown(one.plusMinus / ratio, units).value,
    verdict: 'noted',
    limit: 'no limit: for a figure printed for sea level; a reading follows the air pressure in proportion',
    why: `${pressureWords(one.dry, units)} here, where the air has ${(100 * ratio).toFixed(0)} % of its pressure at sea level.`,
    source: sources.seaLevel,
  }))
}

/** What the typed ratio makes plausible; above all estimates the reading is doubted, below nothing is proved. */
export function plausible(
  values: readonly Measured[],
  { stage, units, circumstances }: Setting,
): CylinderVerdict[] {
  const typed = circumstances.specification?.compressionRatio
  if (typed === undefined) return []
  const airPsi = seaLevelPsi * pressureRatio(atmosphereOf(circumstances))
  const low = thumbPsi(typed, airPsi)
  const high = Math.max(low, polytropicPsi(typed, airPsi, exponent.high))
  return values.map(one => plausibleOf(one, { ratio: typed, low, high }, { stage, units }))
}

function plausibleOf(
  one: Measured,
  { ratio, low, high }: { ratio: number; low: number; high: number },
  { stage, units }: { stage: Stage; units: Setting['units'] },
): CylinderVerdict {
  const words = (psi: number) => pressureWords(psi, units)
  const tooHigh = againstMaximum(one.dry, one.plusMinus, high) === 'outside'
  return {
    test: 'compression',
    rule: 'plausible for the ratio',
    cylinder: one.cylinder,
    stage,
    ...pressureShown(one.dry, units),
    plusMinus: pressureShown(one.plusMinus, units).value,
    verdict: tooHigh ? 'watch' : 'noted',
    limit: `an estimate and no limit: ${words(low)} to ${words(high)} for ${ratio}:1`,
    why: tooHigh
      ? `${words(one.dry)} is more than ${ratio}:1 can be expected to give: scale misread, or oil, fuel or carbon in the cylinder.`
      : `${words(one.dry)}; a late closing intake valve, slow cranking and leakage all take away from the estimate.`,
    source: sources.estimate,
    about: 'reading',
  }
}

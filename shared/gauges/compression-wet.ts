// The wet pull: what oil on the piston does to a low cylinder, beside what it does to a good one.
import type { Layout } from '../engine/layout-schema.ts'
import { readingError } from './calling.ts'
import type { Setting } from './compression-comparison.ts'
import type { Measured } from './compression-values.ts'
import { median } from './middle.ts'
import { inWords, percentWords, pressureWords, round } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

type Wet = Measured & { wet: number }
const hasWet = (one: Measured): one is Wet => one.wet !== undefined && one.dry > 0

const riseOf = (one: Wet): number => (100 * (one.wet - one.dry)) / one.dry
const doubtOf = (one: Wet): number => {
  const wetError = readingError.psi
  return 100 * Math.hypot(wetError / one.dry, (one.wet * one.plusMinus) / one.dry ** 2)
}

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
  const good = wet.filter(one => !low.has(one.cylinder))
  return wet.map(one => ({
    test: 'compression',
    rule: 'wet rise',
    cylinder: one.cylinder,
    stage,
    value: round(riseOf(one)),
    plusMinus: round(doubtOf(one)),
    unit: '%',
    verdict: 'noted',
    limit:
      'no limit: oil takes up chamber space and lifts any reading; compare with a good cylinder given the same oil',
    why: `Dry ${pressureWords(one.dry, units)}, wet ${pressureWords(one.wet, units)}. ${meaning(one, low, good, arrangement)}`,
    source: sources.wet,
  }))
}

function meaning(
  one: Wet,
  low: ReadonlySet<number>,
  good: readonly Wet[],
  arrangement: Layout['arrangement'],
): string {
  if (!low.has(one.cylinder)) return 'It was not low dry, so its rise is what the oil itself does.'
  const rise = riseOf(one)
  const doubt = doubtOf(one)
  const lying =
    arrangement === 'inline'
      ? ''
      : ' In a bank that leans the oil lies unevenly, so a small rise proves little.'
  if (rise <= doubt) return `Oil does not help: valves, head gasket or head before rings.${lying}`
  if (good.length === 0)
    return 'It rises with oil, which points to rings, piston or bore, but the oil alone lifts the reading too: give a good cylinder the same oil and compare.'
  const usual = median(good.map(riseOf))
  const from = `Cylinder ${inWords(good.map(other => other.cylinder))}, not low, rose ${percentWords(usual)} with the same oil`
  return rise - usual > Math.hypot(doubt, median(good.map(doubtOf)))
    ? `${from}; this one clearly more: rings, piston or bore.`
    : `${from}; this one no more, so the oil's volume explains it: valves, head gasket or head before rings.${lying}`
}

// The cylinders' dry compression against each other and against a typed specification.
import type { Circumstances } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { atmosphereOf, pressureRatio } from './atmosphere.ts'
import { againstMaximum, againstMinimum, settle } from './calling.ts'
import { basisOf, inPsi, type Measured } from './compression-values.ts'
import { shareOf } from './compression-share.ts'
import { ruleSet } from './rule-sets.ts'
import { pressureShown, pressureWords, type ShownUnits } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

export const compressionRules = {
  firstPuffShare: 70,
  repeatPsi: 5,
  /** One car maker's floor at sea level; a warning only, since other engines are built lower. */
  floorPsi: 100,
} as const

export type Setting = { stage: Stage; circumstances: Circumstances; units: ShownUnits }

/** The cylinder with the highest value; the lowest number of several alike. */
export const highestOf = (values: readonly Measured[]): Measured | undefined =>
  values.toSorted((a, b) => b.dry - a.dry || a.cylinder - b.cylinder)[0]

/** Cylinders that one tester was used on; a different tester may read all of its own higher or lower. */
export function byTester(values: readonly Measured[]): Measured[][] {
  const named = new Set(values.flatMap(one => one.testers))
  if (named.size < 2) return values.length === 0 ? [] : [[...values]]
  const groups = new Map<string, Measured[]>()
  for (const one of values) {
    const key = one.testers.join(' ')
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  return [...groups.values()]
}

/**
 * How far each stands below the highest, and its share by the job's rule set, among the cylinders of one tester. A typed
 * spread takes the place of both rules.
 */
export function againstHighest(values: readonly Measured[], setting: Setting): CylinderVerdict[] {
  const typedSpread = setting.circumstances.specification?.compressionSpread
  return byTester(values).flatMap(group => {
    const highest = highestOf(group)
    if (!highest || group.length < 2) return []
    return group.flatMap(one => [
      belowHighest(one, highest, setting),
      ...(typedSpread || highest.dry <= 0 ? [] : [shareOf(one, group, highest, setting)]),
    ])
  })
}

function belowHighest(one: Measured, highest: Measured, setting: Setting): CylinderVerdict {
  const { units, stage, circumstances } = setting
  const words = (psi: number) => pressureWords(psi, units)
  const typed = circumstances.specification?.compressionSpread
  const rules = ruleSet('compressionSpread', setting)
  const maximum = typed ? inPsi(typed) : rules.psi
  const below = highest.dry - one.dry
  const plusMinus = one === highest ? 0 : Math.hypot(one.between, highest.between)
  const verdict = againstMaximum(below, plusMinus, maximum)
  return {
    test: 'compression',
    rule: 'below highest',
    cylinder: one.cylinder,
    stage,
    ...pressureShown(below, units),
    plusMinus: pressureShown(plusMinus, units).value,
    verdict,
    limit: `at most ${words(maximum)} below the highest cylinder`,
    why:
      one === highest
        ? `The highest: ${words(one.dry)} (${basisOf(one, words)}).`
        : `${words(one.dry)} (${basisOf(one, words)}) against ${words(highest.dry)} in cylinder ${highest.cylinder}.${settle(verdict)}`,
    source: typed ? sources.typed : rules.source,
  }
}

/** Against the typed minimum, or without one against a floor that only warns. */
export function againstLeast(values: readonly Measured[], setting: Setting): CylinderVerdict[] {
  const typed = setting.circumstances.specification?.compressionMinimum
  return values.map(one => (typed ? typedMinimum(one, inPsi(typed), setting) : usualFloor(one, setting)))
}

/** Above the typed maximum a cylinder is not weak, so this only warns: something takes up its chamber, or a misreading. */
export function againstMost(
  values: readonly Measured[],
  { stage, units, circumstances }: Setting,
): CylinderVerdict[] {
  const typed = circumstances.specification?.compressionMaximum
  if (typed === undefined) return []
  const maximum = inPsi(typed)
  return values.map(one => {
    const call = againstMaximum(one.dry, one.plusMinus, maximum)
    const seen = `${pressureWords(one.dry, units)} (${basisOf(one, psi => pressureWords(psi, units))}).`
    return {
      test: 'compression',
      rule: 'specified maximum',
      cylinder: one.cylinder,
      stage,
      ...pressureShown(one.dry, units),
      plusMinus: pressureShown(one.plusMinus, units).value,
      verdict: call === 'outside' ? 'watch' : call,
      limit: `at most ${pressureWords(maximum, units)}`,
      why:
        call === 'outside'
          ? `${seen} Too high: carbon, oil or fuel in the cylinder, or the scale was misread.`
          : `${seen}${settle(call)}`,
      source: sources.typed,
    }
  })
}

/** A book figure is usually for sea level: between it and its share at this altitude, nobody can call it. */
function typedMinimum(
  one: Measured,
  minimum: number,
  { stage, units, circumstances }: Setting,
): CylinderVerdict {
  const words = (psi: number) => pressureWords(psi, units)
  const ratio = Math.min(1, pressureRatio(atmosphereOf(circumstances)))
  const here = minimum * ratio
  const asTyped = againstMinimum(one.dry, one.plusMinus, minimum)
  const verdict =
    asTyped === 'outside' && againstMinimum(one.dry, one.plusMinus, here) !== 'outside'
      ? 'cannot be called'
      : asTyped
  const altitude =
    ratio < 0.99
      ? ` If the figure is for sea level, ${words(here)} is its equal in this air; ask the service information.`
      : ''
  return {
    test: 'compression',
    rule: 'specified minimum',
    cylinder: one.cylinder,
    stage,
    ...pressureShown(one.dry, units),
    plusMinus: pressureShown(one.plusMinus, units).value,
    verdict,
    limit: `at least ${words(minimum)}`,
    why: `${words(one.dry)} (${basisOf(one, words)}).${altitude}${altitude ? '' : settle(verdict)}`,
    source: sources.typed,
  }
}

/**
 * A floor only warns, and reading above it proves nothing, unless the job's rule set has a floor of its own: then it is
 * a limit. Either way it falls with the air pressure.
 */
function usualFloor(one: Measured, setting: Setting): CylinderVerdict {
  const { stage, units, circumstances } = setting
  const rules = ruleSet('compressionShare', setting)
  const isLimit = rules.floorPsi !== undefined
  const words = (psi: number) => pressureWords(psi, units)
  const floor =
    (rules.floorPsi ?? compressionRules.floorPsi) * Math.min(1, pressureRatio(atmosphereOf(circumstances)))
  const call = againstMinimum(one.dry, one.plusMinus, floor)
  const asWarning = call === 'within' ? 'noted' : call === 'outside' ? 'watch' : call
  const seen = `${words(one.dry)} (${basisOf(one, words)})`
  return {
    test: 'compression',
    rule: isLimit ? 'floor' : 'usual floor',
    cylinder: one.cylinder,
    stage,
    ...pressureShown(one.dry, units),
    plusMinus: pressureShown(one.plusMinus, units).value,
    verdict: isLimit ? call : asWarning,
    limit: isLimit
      ? `none under ${words(floor)}; the service information decides`
      : `seldom below ${words(floor)}; the service information decides`,
    why:
      call === 'within'
        ? `${seen}; no specification is typed.`
        : `${seen}. If all are as low: cranking speed, a shut throttle, valve timing or wear; some engines are built so.${settle(call)}`,
    source: isLimit ? rules.source : sources.floor,
  }
}

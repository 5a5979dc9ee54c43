// The cylinders' dry compression against each other and against a typed specification.
import type { Circumstances } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { atmosphereOf, pressureRatio } from './atmosphere.ts'
import { againstMaximum, againstMinimum, settle } from './calling.ts'
import { basisOf, inPsi, type Measured } from './compression-values.ts'
import { percentWords, pressureShown, pressureWords, round, type ShownUnits } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

export const compressionRules = {
  /** Highest less lowest. */
  spreadPsi: 20,
  shareOfHighest: 75,
  firstPuffShare: 70,
  repeatPsi: 5,
  /** One car maker's floor at sea level; a warning only, since other engines are built lower. */
  floorPsi: 100,
} as const

export type Setting = { stage: Stage; circumstances: Circumstances; units: ShownUnits }

/** The cylinder with the highest value; the lowest number of several alike. */
export const highestOf = (values: readonly Measured[]): Measured | undefined =>
  values.toSorted((a, b) => b.dry - a.dry || a.cylinder - b.cylinder)[0]

/** How far each stands below the highest, and its share of the highest. A typed spread takes the place of both rules. */
export function againstHighest(values: readonly Measured[], setting: Setting): CylinderVerdict[] {
  const highest = highestOf(values)
  if (!highest || values.length < 2) return []
  const typedSpread = setting.circumstances.specification?.compressionSpread
  return values.flatMap(one => [
    belowHighest(one, highest, setting),
    ...(typedSpread || highest.dry <= 0 ? [] : [shareOfHighest(one, highest, setting)]),
  ])
}

function belowHighest(one: Measured, highest: Measured, setting: Setting): CylinderVerdict {
  const { units, stage, circumstances } = setting
  const words = (psi: number) => pressureWords(psi, units)
  const typed = circumstances.specification?.compressionSpread
  const maximum = typed ? inPsi(typed) : compressionRules.spreadPsi
  const below = highest.dry - one.dry
  const plusMinus = one === highest ? 0 : Math.hypot(one.plusMinus, highest.plusMinus)
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
    source: typed ? sources.typed : sources.practice,
  }
}

function shareOfHighest(one: Measured, highest: Measured, { stage, units }: Setting): CylinderVerdict {
  const words = (psi: number) => pressureWords(psi, units)
  const share = (100 * one.dry) / highest.dry
  const plusMinus =
    one === highest
      ? 0
      : 100 * Math.hypot(one.plusMinus / highest.dry, (one.dry * highest.plusMinus) / highest.dry ** 2)
  const verdict = againstMinimum(share, plusMinus, compressionRules.shareOfHighest)
  return {
    test: 'compression',
    rule: 'share of highest',
    cylinder: one.cylinder,
    stage,
    value: round(share),
    plusMinus: round(plusMinus),
    unit: '%',
    verdict,
    limit: `at least ${percentWords(compressionRules.shareOfHighest)} of the highest cylinder`,
    why: `${words(one.dry)} against ${words(highest.dry)} in cylinder ${highest.cylinder}.${settle(verdict)}`,
    source: sources.share,
  }
}

/** Against the typed minimum, or without one against a floor that only warns. */
export function againstLeast(values: readonly Measured[], setting: Setting): CylinderVerdict[] {
  const typed = setting.circumstances.specification?.compressionMinimum
  return values.map(one => (typed ? typedMinimum(one, inPsi(typed), setting) : usualFloor(one, setting)))
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

/** Reading above the floor proves nothing, so it is only noted. */
function usualFloor(one: Measured, { stage, units, circumstances }: Setting): CylinderVerdict {
  const words = (psi: number) => pressureWords(psi, units)
  const floor = compressionRules.floorPsi * Math.min(1, pressureRatio(atmosphereOf(circumstances)))
  const call = againstMinimum(one.dry, one.plusMinus, floor)
  return {
    test: 'compression',
    rule: 'usual floor',
    cylinder: one.cylinder,
    stage,
    ...pressureShown(one.dry, units),
    plusMinus: pressureShown(one.plusMinus, units).value,
    verdict: call === 'within' ? 'noted' : call === 'outside' ? 'watch' : call,
    limit: `seldom below ${words(floor)}; the service information decides`,
    why:
      call === 'within'
        ? `${words(one.dry)} (${basisOf(one, words)}); no specification is typed.`
        : `${words(one.dry)} (${basisOf(one, words)}). If all are as low: cranking speed, a shut throttle, valve timing or wear; some engines are built so.${settle(call)}`,
    source: sources.floor,
  }
}

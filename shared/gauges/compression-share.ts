// The share of the highest cylinder, or of the average of all, that the job's rule set asks of each cylinder.
import { againstMinimum, settle } from './calling.ts'
import type { Setting } from './compression-comparison.ts'
import type { Measured } from './compression-values.ts'
import { ruleSet } from './rule-sets.ts'
import { percentWords, pressureWords, round } from './shown.ts'
import type { CylinderVerdict } from './verdict.ts'

/** `group`: the cylinders of one tester; `highest` is one of them and above zero. */
export function shareOf(
  one: Measured,
  group: readonly Measured[],
  highest: Measured,
  setting: Setting,
): CylinderVerdict {
  const { stage, units } = setting
  const rules = ruleSet('compressionShare', setting)
  const ofAverage = rules.of === 'average'
  const base = ofAverage ? averageOf(group) : { psi: highest.dry, between: highest.between }
  const share = (100 * one.dry) / base.psi
  const plusMinus =
    one === highest && !ofAverage
      ? 0
      : 100 * Math.hypot(one.between / base.psi, (one.dry * base.between) / base.psi ** 2)
  const verdict = againstMinimum(share, plusMinus, rules.percent)
  const words = (psi: number) => pressureWords(psi, units)
  const against = ofAverage
    ? `an average of ${words(base.psi)}`
    : `${words(highest.dry)} in cylinder ${highest.cylinder}`
  return {
    test: 'compression',
    rule: ofAverage ? 'share of average' : 'share of highest',
    cylinder: one.cylinder,
    stage,
    value: round(share),
    plusMinus: round(plusMinus),
    unit: '%',
    verdict,
    limit: `at least ${percentWords(rules.percent)} of ${ofAverage ? 'the average of all' : 'the highest cylinder'}`,
    why: `${words(one.dry)} against ${against}.${settle(verdict)}`,
    source: rules.source,
  }
}

function averageOf(group: readonly Measured[]): { psi: number; between: number } {
  const sum = group.reduce((all, one) => all + one.dry, 0)
  return {
    psi: sum / group.length,
    between: Math.hypot(...group.map(one => one.between)) / group.length,
  }
}

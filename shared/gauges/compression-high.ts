// One cylinder that stands above all the others: what lifts a reading, and that it makes sound ones look low.
import { againstMaximum } from './calling.ts'
import { byTester, highestOf, type Setting } from './compression-comparison.ts'
import { inPsi, type Measured } from './compression-values.ts'
import { ruleSet } from './rule-sets.ts'
import { pressureShown, pressureWords } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

/**
 * On the highest cylinder alone, and only where the others lie within the spread of each other and it lies clearly
 * beyond that spread from each of them. Two cylinders cannot tell which of them is odd.
 */
export function standsAbove(values: readonly Measured[], setting: Setting): CylinderVerdict[] {
  const { stage, units, circumstances } = setting
  const typed = circumstances.specification?.compressionSpread
  const rules = ruleSet('compressionSpread', setting)
  const spread = typed ? inPsi(typed) : rules.psi
  return byTester(values).flatMap(group => {
    const highest = highestOf(group)
    const others = group.filter(one => one !== highest)
    const next = highestOf(others)
    if (highest === undefined || next === undefined || others.length < 2) return []
    const gap = highest.dry - next.dry
    const plusMinus = Math.hypot(highest.between, next.between)
    const alike = others.every(one => next.dry - one.dry <= spread)
    if (!alike || againstMaximum(gap, plusMinus, spread) !== 'outside') return []
    return [
      {
        test: 'compression' as const,
        rule: 'stands above',
        cylinder: highest.cylinder,
        stage,
        ...pressureShown(gap, units),
        plusMinus: pressureShown(plusMinus, units).value,
        verdict: 'watch' as const,
        limit: `at most ${pressureWords(spread, units)} above the next, the others being alike`,
        why: `${pressureWords(highest.dry, units)} against ${pressureWords(next.dry, units)} in cylinder ${next.cylinder}, the next. The others are alike: carbon, oil or fuel may lift this one, and it makes them look low. Pull it again before calling them.`,
        source: typed
          ? sources.typed
          : `${rules.source}; high readings: technician certification study pages`,
      },
    ]
  })
}

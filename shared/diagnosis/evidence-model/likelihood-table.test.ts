import { expect, it } from 'vitest'
import { type CauseId } from './causes.ts'
import { findings } from './findings.ts'
import { likelihoodTable } from './likelihood-table.ts'
import { outcomeChances } from './outcome-chances.ts'

it.each(findings.map(one => [one.id, one] as const))(
  '%s: the table is the chances of the outcomes, weighed',
  (_, one) => {
    const finding = { ...one, most: 1e9 }
    const [first, second, third] = Object.keys(finding.effects) as CauseId[]
    const lists: CauseId[][] = [[], first ? [first] : [], first && second ? [first, second] : []]
    const other: CauseId[][] = [[], third ? [third] : []]
    for (const at of finding.outcomes.keys()) {
      const weights = finding.outcomes.map((_, each) => (each === at ? 1 : 0.2))
      const table = likelihoodTable(finding, weights, lists, other, [[]])
      const plain = lists.flatMap(a =>
        other.map(b =>
          outcomeChances(finding, [...a, ...b]).reduce((sum, p, i) => sum + p * (weights[i] ?? 0), 0),
        ),
      )
      for (const [cell, value] of plain.entries()) {
        expect((table[cell] ?? 0) / (table[0] ?? 1)).toBeCloseTo(value / (plain[0] ?? 1), 9)
      }
    }
  },
)

it('holds every value within the most of a finding, the sound engine among them', () => {
  const [finding] = findings
  if (!finding) throw new Error('no findings')
  const causes = Object.keys(finding.effects) as CauseId[]
  for (const at of finding.outcomes.keys()) {
    const weights = finding.outcomes.map((_, each) => (each === at ? 1 : 0))
    const table = likelihoodTable(finding, weights, [[], ...causes.map(one => [one])], [[]], [[]])
    expect(Math.max(...table) / Math.min(...table)).toBeLessThanOrEqual(finding.most * (1 + 1e-12))
  }
})

// The rule sets as data: ids that a job can hold, a choice that is followed, a default where nothing was chosen.
import { describe, expect, it } from 'vitest'
import { ruleChoiceSchema } from './rule-choice-schema.ts'
import { type RuleKind, ruleSet, ruleSets } from './rule-sets.ts'

const kinds = ruleChoiceSchema.keyof().options

describe.each(kinds)('%s', (kind: RuleKind) => {
  it('has ids that a job can hold, each once, with title and source', () => {
    const sets = ruleSets[kind]
    expect(new Set(sets.map(one => one.id)).size).toBe(sets.length)
    for (const { id, title, source } of sets) {
      expect(ruleChoiceSchema.safeParse({ [kind]: id }).success).toBe(true)
      expect(title.length).toBeGreaterThan(5)
      expect(source.length).toBeGreaterThan(5)
    }
  })
  it('follows the choice of the job, and has a default', () => {
    for (const { id } of ruleSets[kind])
      expect(ruleSet(kind, { circumstances: { rules: { [kind]: id } } }).id).toBe(id)
    expect(ruleSet(kind, { circumstances: {} })).toBe(ruleSets[kind][0])
    expect(ruleSet(kind, { circumstances: { rules: { [kind]: 'not-published' } } })).toBe(ruleSets[kind][0])
  })
})

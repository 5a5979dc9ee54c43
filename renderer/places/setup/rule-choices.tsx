// Published limits contradict each other: which of them are the shop's own. New jobs are judged by these.
import type { RuleChoice } from '../../../shared/gauges/rule-choice-schema.ts'
import { type RuleKind, ruleSets } from '../../../shared/gauges/rule-sets.ts'

const kinds: readonly { kind: RuleKind; label: string }[] = [
  { kind: 'compressionSpread', label: 'Compression, spread' },
  { kind: 'compressionShare', label: 'Compression, share' },
  { kind: 'leakDown', label: 'Leak-down' },
  { kind: 'idleVacuum', label: 'Idle vacuum, sea level' },
  { kind: 'crankingVacuum', label: 'Cranking vacuum' },
  { kind: 'trims', label: 'Fuel trims' },
  { kind: 'injectorBalance', label: 'Injector balance' },
]

type RuleChoicesProps = { rules: RuleChoice; onChange: (rules: RuleChoice) => void }

export function RuleChoices({ rules, onChange }: RuleChoicesProps) {
  return kinds.map(({ kind, label }) => {
    const sets = ruleSets[kind]
    const chosen = sets.find(one => one.id === rules[kind]) ?? sets[0]
    return (
      <label key={kind} className="field">
        <span className="field-label">{label}</span>
        <select value={chosen.id} onChange={event => onChange({ ...rules, [kind]: event.target.value })}>
          {sets.map(one => (
            <option key={one.id} value={one.id}>
              {one.title}
            </option>
          ))}
        </select>
        <span className="field-remark">Source: {chosen.source}.</span>
      </label>
    )
  })
}

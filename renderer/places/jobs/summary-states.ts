// A job's condition map in a few words: the worst state and the cylinders in it, then how many are still unknown.
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import type { State } from '../../../shared/diagnosis/condition-map.ts'

export type StatesInShort = { worst: State; cylinders: number[]; unknown: number }

const bySeverity = ['fault', 'watch', 'sound'] as const

/** `cylinders` is empty where all that is known is of one state. */
export function statesInShort(states: JobSummary['states']): StatesInShort {
  const unknown = states.filter(one => one.state === 'unknown').length
  const worst = bySeverity.find(state => states.some(one => one.state === state)) ?? 'unknown'
  const inIt = states.filter(one => one.state === worst).map(one => one.cylinder)
  const known = states.length - unknown
  const all =
    worst === 'sound' || worst === 'unknown' || (inIt.length === known && known > 1 && unknown === 0)
  return { worst, cylinders: all ? [] : inIt, unknown: worst === 'unknown' ? 0 : unknown }
}

// The likely explanations of a posterior in the planner's words: which faults are there, and how likely that is.
import { likelyExplanations } from '../../inference/likely-explanations.ts'
import { type Answer, found } from '../../inference/problem.ts'
import type { Posterior } from '../../inference/propagate.ts'
import { type Explanation, type Fault, faultKey } from './planning-view.ts'

/** What a variable's state means: the faults that are there in it. */
export type FaultsOf = (variable: string, state: number) => readonly Fault[]

/** An explanation rarer than this is left out: a plan over the others cannot be off by more than its share. */
const leastChance = 0.002

/** The planner's time grows with these; what is left out is rare. */
const mostExplanations = 32

/**
 * The likeliest explanations by their faults; assignments that differ in other things (a gauge that reads low) are added up.
 * Chances are as in the posterior, so they sum to less than 1. Problems: those of `likelyExplanations`.
 */
export function explanationsOf(posterior: Posterior, faultsOf: FaultsOf): Answer<Explanation[]> {
  const likely = likelyExplanations(posterior, leastChance)
  if (!likely.ok) return likely
  const names = posterior.compiled.network.variables.map(({ name }) => name)
  const byFaults = new Map<string, { faults: readonly Fault[]; chance: number }>()
  for (const { states, chance } of likely.value) {
    const faults = names.flatMap((name, at) => faultsOf(name, states[at] ?? 0))
    const key = faults.map(faultKey).sort().join(' + ')
    const before = byFaults.get(key)
    byFaults.set(key, { faults, chance: chance + (before?.chance ?? 0) })
  }
  const sorted = [...byFaults.values()].sort((a, b) => b.chance - a.chance)
  return found(sorted.slice(0, mostExplanations))
}

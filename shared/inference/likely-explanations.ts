// All explanations that have at least a given chance: every assignment of states to all variables whose posterior probability
// reaches it. Found exactly by walking down the tree: what is settled so far is never less likely than any way to go on, and
// no more than 1 / chance such beginnings can reach the chance at once.
import { type Answer, failed, found } from './problem.ts'
import { numbersOf } from './posterior.ts'
import type { Posterior } from './propagate.ts'

export type LikelyExplanation = {
  /** State of each variable, in the network's own order. */
  states: Int32Array
  /** Its posterior probability. */
  chance: number
}

/** Below this there could be too many. */
const leastChance = 1e-5

/**
 * Every explanation with a posterior probability of `atLeast` or more, the likeliest first. Problems: 'stale posterior';
 * 'hidden variables' (compile with `decompose: false`); 'bad evidence' where `atLeast` is not between 0.00001 and 1.
 */
export function likelyExplanations(posterior: Posterior, atLeast: number): Answer<LikelyExplanation[]> {
  const { compiled, work } = posterior
  const stale = numbersOf(posterior, [])
  if (!stale.ok) return stale
  if (compiled.visible < compiled.cards.length) {
    return failed('hidden variables', 'network', 'has to be compiled with decompose: false for this question')
  }
  if (!(atLeast >= leastChance && atLeast <= 1)) {
    return failed('bad evidence', 'atLeast', `${atLeast} is not between ${leastChance} and 1`)
  }
  let beginnings: LikelyExplanation[] = [{ states: new Int32Array(compiled.cards.length), chance: 1 }]
  for (let at = work.cliques.length - 1; at >= 0; at -= 1) {
    const shape = compiled.tree.cliques[at]
    const clique = work.cliques[at]
    if (!shape || !clique) continue
    const { view, columns } = clique
    const width = columns.length
    beginnings = beginnings.flatMap(({ states, chance }) => {
      const row = shape.separator.reduce(
        (index, variable, which) => index * (shape.separatorCards[which] ?? 1) + (states[variable] ?? 0),
        0,
      )
      let sum = 0
      for (let state = 0; state < width; state += 1) {
        sum += (view[row * width + state] as number) * (columns[state] as number)
      }
      const longer: LikelyExplanation[] = []
      for (let state = 0; state < width; state += 1) {
        const share = (chance * (view[row * width + state] as number) * (columns[state] as number)) / sum
        if (share < atLeast) continue
        const settled = states.slice()
        settled[shape.own] = state
        longer.push({ states: settled, chance: share })
      }
      return longer
    })
  }
  return found(beginnings.sort((a, b) => b.chance - a.chance))
}

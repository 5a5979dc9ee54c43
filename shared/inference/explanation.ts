// The most probable explanation: the one state of everything that is likeliest given the evidence. Products and maxima run
// up the same tree, then the best states are read off from the root down. Source: Dawid 1992 (from memory).
import type { CompiledNetwork } from './compile.ts'
import { orderEvidence } from './evidence-vectors.ts'
import type { Evidence } from './network.ts'
import { type Answer, failed, found } from './problem.ts'
import { collect, impossible } from './propagate.ts'
import { maxRows } from './table-kernels.ts'
import { type Workspace, workspaceFor } from './workspace.ts'

export type Explanation = {
  /** Variable to state. */
  states: ReadonlyMap<string, number>
  /** Natural log of P(these states and the evidence). */
  logProbability: number
}

/**
 * The likeliest assignment; of equally likely ones the one with lower states, seen from the last-eliminated variable. Needs a
 * network compiled with `decompose: false` where it has wide noisy-OR or noisy-MAX parts ('hidden variables' otherwise:
 * their most probable states would count too). Problems as for `propagate`.
 */
export function mostProbableExplanation(
  compiled: CompiledNetwork,
  evidence: Evidence = {},
  work: Workspace = workspaceFor(compiled),
): Answer<Explanation> {
  if (compiled.visible < compiled.cards.length) {
    return failed('hidden variables', 'network', 'has to be compiled with decompose: false for this question')
  }
  const ordered = orderEvidence(compiled, evidence)
  if (!ordered.ok) return ordered
  work.run += 1
  const log = collect(work, ordered.value, maxRows)
  if (log === null) return impossible(evidence)
  const best = readOff(work)
  const states = new Map([...compiled.numberOf].map(([name, number]) => [name, best[number] ?? 0]))
  return found({ states, logProbability: log + ordered.value.logScale })
}

/** Best state of each variable, by number: each clique's own variable given the separator's states, which are known by then. */
function readOff(work: Workspace): Int32Array {
  const { cliques } = work.compiled.tree
  const best = new Int32Array(work.compiled.cards.length)
  for (let at = cliques.length - 1; at >= 0; at -= 1) {
    const shape = cliques[at]
    const clique = work.cliques[at]
    if (!shape || !clique) continue
    const row = shape.separator.reduce(
      (index, variable, which) => index * (shape.separatorCards[which] ?? 1) + (best[variable] ?? 0),
      0,
    )
    const { view, columns } = clique
    let most = -1
    for (let state = 0; state < columns.length; state += 1) {
      const value = (view[row * columns.length + state] ?? 0) * (columns[state] ?? 0)
      if (value <= most) continue
      most = value
      best[shape.own] = state
    }
  }
  return best
}

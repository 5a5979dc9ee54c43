// One run: evidence goes in, messages run up the tree and down again, and every marginal can be read off.
import type { CompiledNetwork } from './compile.ts'
import { type OrderedEvidence, orderEvidence } from './evidence-vectors.ts'
import { fillClique } from './fill-clique.ts'
import type { Evidence } from './network.ts'
import { type Answer, failed, found } from './problem.ts'
import { divideBy, largest, scaleAll, sumRows, sumTable } from './table-kernels.ts'
import { type Workspace, settle, workspaceFor } from './workspace.ts'

export type Posterior = {
  compiled: CompiledNetwork
  work: Workspace
  run: number
  /** Natural log of the probability of the evidence, counting likelihoods as given. */
  logEvidence: number
}

/**
 * Posterior of a compiled network given evidence. With `work` no table is allocated, and posteriors of earlier runs in it
 * become stale. Likelihood arrays are read in place and must not change while the posterior is in use. Problems: a fault of
 * the evidence; 'impossible evidence' when its probability is 0.
 */
export function propagate(
  compiled: CompiledNetwork,
  evidence: Evidence = {},
  work: Workspace = workspaceFor(compiled),
): Answer<Posterior> {
  const ordered = orderEvidence(compiled, evidence)
  if (!ordered.ok) return ordered
  work.run += 1
  const log = collect(work, ordered.value, sumRows)
  if (log === null) return impossible(evidence)
  distribute(work)
  return found({ compiled, work, run: work.run, logEvidence: log + ordered.value.logScale })
}

type RowReducer = (rows: Float64Array, table: Float64Array, columns: Float64Array) => void

/** Fills every table and sends messages upwards; the log of the total, or null where nothing is possible. */
export function collect(work: Workspace, evidence: OrderedEvidence, reduce: RowReducer): number | null {
  let log = 0
  for (const [at, clique] of work.cliques.entries()) {
    log += fillClique(work, evidence, at)
    reduce(clique.upward, clique.view, clique.columns)
    const most = largest(clique.upward)
    if (!(most > 0)) return null
    scaleAll(clique.upward, 1 / most)
    log += Math.log(most)
  }
  return log
}

/** Sends messages downwards: afterwards a settled table is proportional to the posterior of its clique. */
function distribute(work: Workspace): void {
  const { plans, tree } = work.compiled
  for (let at = work.cliques.length - 1; at >= 0; at -= 1) {
    const clique = work.cliques[at]
    const parent = work.cliques[tree.cliques[at]?.parent ?? -1]
    const map = plans[at]?.intoParent
    if (!clique) continue
    if (parent && map) {
      sumTable(clique.weights, settle(parent), map)
      scaleAll(clique.weights, 1 / largest(clique.weights))
      divideBy(clique.weights, clique.upward)
    } else clique.weights.fill(1)
  }
}

/** The answer to evidence of probability 0, naming what was given. */
export function impossible(evidence: Evidence): ReturnType<typeof failed> {
  const names = [evidence.observed, evidence.soft, evidence.likelihoods].flatMap(part =>
    Object.keys(part ?? {}),
  )
  return failed('impossible evidence', names.join(', '), 'cannot all be true in this network')
}

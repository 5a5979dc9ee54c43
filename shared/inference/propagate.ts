// One run: evidence goes in, messages run up the tree and down again, and every marginal can be read off.
import type { CompiledNetwork } from './compile.ts'
import { type OrderedEvidence, orderEvidence } from './evidence-vectors.ts'
import type { Evidence } from './network.ts'
import { type Answer, failed, found } from './problem.ts'
import {
  divideBy,
  largest,
  multiplyTable,
  scaleAll,
  scaleColumns,
  scaleRows,
  setTable,
  sumRows,
  sumTable,
} from './table-kernels.ts'
import { type Workspace, workspaceFor } from './workspace.ts'

export type Posterior = {
  compiled: CompiledNetwork
  work: Workspace
  run: number
  /** Natural log of the probability of the evidence, counting likelihoods as given. */
  logEvidence: number
}

/** After so many factors in one clique its table is scaled anew, so that many small likelihoods cannot vanish. */
const factorsBetweenScalings = 8

/**
 * Posterior of a compiled network given evidence. With `work` no table is allocated, and posteriors of earlier runs in it
 * become stale. Problems: a fault of the evidence; 'impossible evidence' when its probability is 0.
 */
export function propagate(
  compiled: CompiledNetwork,
  evidence: Evidence = {},
  work: Workspace = workspaceFor(compiled),
): Answer<Posterior> {
  const ordered = orderEvidence(compiled, evidence)
  if (!ordered.ok) return ordered
  work.run += 1
  work.settled.fill(0)
  const log = collect(work, ordered.value, sumRows)
  if (log === null)
    return failed('impossible evidence', namesIn(evidence), 'cannot all be true in this network')
  distribute(work)
  return found({ compiled, work, run: work.run, logEvidence: log + ordered.value.logScale })
}

type RowReducer = (rows: Float64Array, table: Float64Array, width: number) => void

/** Fills every table and sends messages upwards; the log of the total, or null where nothing is possible. */
export function collect(work: Workspace, evidence: OrderedEvidence, reduce: RowReducer): number | null {
  let log = 0
  for (const [at, clique] of work.compiled.tree.cliques.entries()) {
    const table = work.tables[at]
    const message = work.upward[at]
    if (!table || !message) continue
    log += fillTable(work, evidence, at, table)
    reduce(message, table, clique.cards.at(-1) ?? 1)
    const most = largest(message)
    if (!(most > 0)) return null
    scaleAll(message, 1 / most)
    log += Math.log(most)
  }
  return log
}

/** Product of all that enters a clique; the log of what was divided out on the way. */
function fillTable(work: Workspace, evidence: OrderedEvidence, at: number, table: Float64Array): number {
  const { compiled } = work
  const plan = compiled.plans[at]
  let entries = 0
  let log = 0
  const enter = (values: ArrayLike<number>, map: Parameters<typeof setTable>[2], scale: number) => {
    if (entries === 0) setTable(table, values, map, scale)
    else multiplyTable(table, values, map, scale)
    entries += 1
    if (entries % factorsBetweenScalings !== 0) return
    const most = largest(table)
    if (most > 0) {
      scaleAll(table, 1 / most)
      log += Math.log(most)
    }
  }
  for (const slot of plan?.slots ?? []) {
    const likelihood = evidence.likelihoods.get(slot.name)
    if (likelihood) enter(likelihood.values, slot.map, 1 / likelihood.most)
  }
  if (plan?.fixed) enter(plan.fixed.values, plan.fixed.map, 1)
  for (const child of plan?.children ?? []) {
    const message = work.upward[child]
    const map = compiled.plans[child]?.intoParent
    if (message && map) enter(message, map, 1)
  }
  if (entries === 0) table.fill(1)
  const own = evidence.vectors.get(compiled.tree.cliques[at]?.own ?? -1)
  if (own) {
    const scaled = Float64Array.from(own.values, value => value / own.most)
    scaleColumns(table, scaled)
  }
  return log
}

/** Sends messages downwards: afterwards a settled table is proportional to the posterior of its clique. */
function distribute(work: Workspace): void {
  const { plans, tree } = work.compiled
  for (let at = tree.cliques.length - 1; at >= 0; at -= 1) {
    const clique = tree.cliques[at]
    const weights = work.weights[at]
    if (!clique || !weights) continue
    if (clique.parent === null) weights.fill(1)
    else {
      const map = plans[at]?.intoParent
      const above = settle(work, clique.parent)
      const message = work.upward[at]
      if (!map || !message) continue
      sumTable(weights, above, map)
      scaleAll(weights, 1 / largest(weights))
      divideBy(weights, message)
    }
  }
}

/** The clique's table times its weights; done once a run and only where someone asks, so that big leaves can stay as they are. */
export function settle(work: Workspace, at: number): Float64Array {
  const table = work.tables[at] ?? new Float64Array(0)
  const weights = work.weights[at]
  if (work.settled[at] === 0 && weights) {
    scaleRows(table, weights)
    work.settled[at] = 1
  }
  return table
}

const namesIn = (evidence: Evidence): string =>
  [evidence.observed, evidence.soft, evidence.likelihoods].flatMap(part => Object.keys(part ?? {})).join(', ')

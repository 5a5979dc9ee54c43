// What enters one clique in a run: its fixed tables, the likelihoods of its slots, the messages from below.
import type { OrderedEvidence } from './evidence-vectors.ts'
import { type TableMap, largest, multiplyInto, multiplyTable, scaleAll, setTable } from './table-kernels.ts'
import { type CliqueWork, type Workspace, tableOf } from './workspace.ts'

/** After so many factors in one clique its table is scaled anew, so that many small likelihoods cannot vanish. */
const factorsBetweenScalings = 8

/** Makes a clique's view and columns ready; the log of what was divided out on the way. */
export function fillClique(work: Workspace, evidence: OrderedEvidence, at: number): number {
  const clique = work.cliques[at]
  const plan = work.compiled.plans[at]
  if (!clique || !plan) return 0
  clique.settled = false
  fillColumns(clique, plan.fixedOwn, evidence.vectors.get(work.compiled.tree.cliques[at]?.own ?? -1))
  const alone = plan.readInPlace === null ? undefined : evidence.likelihoods.get(plan.readInPlace)
  if (alone) {
    clique.view = alone
    return 0
  }
  const table = tableOf(clique)
  clique.view = table
  let entries = 0
  let log = 0
  const enter = (values: Float64Array, map: TableMap, scale: number) => {
    if (entries === 0) setTable(table, values, map, scale)
    else multiplyTable(table, values, map, scale)
    entries += 1
    if (entries % factorsBetweenScalings === 0) log += rescale(table)
  }
  for (const slot of plan.slots) {
    const likelihood = evidence.likelihoods.get(slot.name)
    if (!likelihood) continue
    const most = largest(likelihood)
    enter(likelihood, slot.map, 1 / most)
    log += Math.log(most)
  }
  if (plan.fixed) enter(plan.fixed.values, plan.fixed.map, 1)
  for (const child of plan.children) {
    const message = work.cliques[child]?.upward
    const map = work.compiled.plans[child]?.intoParent
    if (message && map) enter(message, map, 1)
  }
  if (entries === 0) table.fill(1)
  return log
}

function fillColumns(
  clique: CliqueWork,
  fixed: Float64Array | null,
  evidence: Float64Array | undefined,
): void {
  if (fixed) clique.columns.set(fixed)
  else clique.columns.fill(1)
  if (evidence) multiplyInto(clique.columns, evidence)
}

function rescale(table: Float64Array): number {
  const most = largest(table)
  if (!(most > 0)) return 0
  scaleAll(table, 1 / most)
  return Math.log(most)
}

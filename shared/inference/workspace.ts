// The tables that a run works in. Made once and handed to many runs, they save the time of making them anew.
import type { CompiledNetwork } from './compile.ts'
import { sizeOf } from './factor.ts'

export type Workspace = {
  compiled: CompiledNetwork
  /** One table a clique: product of all that enters it from below; times `weights` once settled. */
  tables: readonly Float64Array[]
  /** Message of each clique to its parent, over its separator. */
  upward: readonly Float64Array[]
  /** What the rest of the network says about each row of a clique's table, beyond its own message. */
  weights: readonly Float64Array[]
  settled: Uint8Array
  /** Counts runs: a posterior of an earlier run is stale. */
  run: number
}

export function workspaceFor(compiled: CompiledNetwork): Workspace {
  const separators = compiled.tree.cliques.map(clique => sizeOf(clique.separatorCards))
  return {
    compiled,
    tables: compiled.plans.map(plan => new Float64Array(plan.cells)),
    upward: separators.map(size => new Float64Array(size)),
    weights: separators.map(size => new Float64Array(size)),
    settled: new Uint8Array(separators.length),
    run: 0,
  }
}

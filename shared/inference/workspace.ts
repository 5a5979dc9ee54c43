// The tables that a run works in. Made once and handed to many runs, they save the time of making them anew.
import type { CompiledNetwork } from './compile.ts'
import { sizeOf } from './factor.ts'

/** What a run keeps of one clique. Its belief is `view` times `columns` times `weights`, row by row. */
export type CliqueWork = {
  /** Made when first needed: a clique with one likelihood over all of it is read where that likelihood lies. */
  table: Float64Array | null
  view: Float64Array
  /** What bears on the clique's own variable alone: one number a column. */
  columns: Float64Array
  /** Message to the parent: one number a row, that is, a cell of the separator. */
  upward: Float64Array
  /** What the rest of the network says about each row, beyond the clique's own message. */
  weights: Float64Array
  /** Columns and weights have been multiplied into the view (which is the table then). */
  settled: boolean
}

export type Workspace = {
  compiled: CompiledNetwork
  cliques: readonly CliqueWork[]
  /** Counts runs: a posterior of an earlier run is stale. */
  run: number
}

export function workspaceFor(compiled: CompiledNetwork): Workspace {
  const cliques = compiled.tree.cliques.map((clique): CliqueWork => {
    const rows = sizeOf(clique.separatorCards)
    return {
      table: null,
      view: new Float64Array(0),
      columns: new Float64Array(clique.cards.at(-1) ?? 1),
      upward: new Float64Array(rows),
      weights: new Float64Array(rows),
      settled: false,
    }
  })
  return { compiled, cliques, run: 0 }
}

/** The clique's own table, with whatever the last run left in it. */
export function tableOf(work: CliqueWork): Float64Array {
  work.table ??= new Float64Array(work.upward.length * work.columns.length)
  return work.table
}

/** The clique's table proportional to its posterior; worked out once a run and only where someone asks. */
export function settle(work: CliqueWork): Float64Array {
  const table = tableOf(work)
  if (!work.settled) {
    const { view, columns, weights } = work
    const width = columns.length
    let cell = 0
    for (let row = 0; row < weights.length; row += 1) {
      const weight = weights[row] as number
      for (let at = 0; at < width; at += 1, cell += 1) {
        table[cell] = weight * (view[cell] as number) * (columns[at] as number)
      }
    }
    work.view = table
    work.settled = true
    columns.fill(1)
    weights.fill(1)
  }
  return table
}

// The tree of cliques that messages run on: one clique for each eliminated variable, holding it and its separator, hanging
// from the clique of the next-eliminated variable of that separator (a bucket tree, Dechter 1999). Small cliques inside larger
// ones are kept on purpose: big tables then stay leaves, which send one message up and need none worked out below them.
import { eliminationOrder } from './elimination-order.ts'

export type Clique = {
  /** The variable eliminated here; it runs fastest in the clique's table. */
  own: number
  /** `own` last; the others as in a factor that covers the clique, else later-eliminated ones first. */
  scope: readonly number[]
  cards: readonly number[]
  /** Scope without `own`. */
  separator: readonly number[]
  separatorCards: readonly number[]
  /** Index of the clique that takes this one's message; null for the root of its part of the network. */
  parent: number | null
}

export type JunctionTree = {
  /** In order of elimination: a clique comes before its parent. */
  cliques: readonly Clique[]
  /** For each variable the index of its clique. */
  cliqueOf: Int32Array
  cells: number
}

/** Builds the tree for variables with `cards` states whose factors have these scopes; the last ones set the tables' order. */
export function junctionTree(scopes: readonly (readonly number[])[], cards: readonly number[]): JunctionTree {
  const { order, separators, cells } = eliminationOrder(scopes, cards)
  const position = new Int32Array(cards.length)
  order.forEach((variable, at) => {
    position[variable] = at
  })
  const place = (variable: number) => position[variable] ?? 0
  const statesOf = (variable: number) => cards[variable] ?? 1
  const cliques = order.map(own => {
    const byPlace = [...(separators[own] ?? [])].sort((a, b) => place(b) - place(a))
    const next = byPlace.at(-1)
    const covering = scopes.findLast(each => each.length === byPlace.length + 1 && each.at(-1) === own)
    const scope = covering && byPlace.every(each => covering.includes(each)) ? covering : [...byPlace, own]
    const separator = scope.slice(0, -1)
    return {
      own,
      scope,
      cards: scope.map(statesOf),
      separator,
      separatorCards: separator.map(statesOf),
      parent: next === undefined ? null : place(next),
    }
  })
  return { cliques, cliqueOf: position, cells }
}

/** The clique that holds a whole scope of one factor: that of its first-eliminated variable. */
export function cliqueHolding(tree: JunctionTree, scope: readonly number[]): number {
  let first = tree.cliques.length - 1
  for (const variable of scope) first = Math.min(first, tree.cliqueOf[variable] ?? first)
  return first
}

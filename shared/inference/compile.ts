// Makes a network ready to run: checked, numbered, its tree built, its fixed tables merged and every index map worked out.
import { asFactors } from './as-factors.ts'
import { checkNetwork } from './check-network.ts'
import { product, unionOf } from './factor-algebra.ts'
import { type Factor, type FactorShape, sizeOf } from './factor.ts'
import { type JunctionTree, cliqueHolding, junctionTree } from './junction-tree.ts'
import type { Network } from './network.ts'
import { type Answer, failed, found } from './problem.ts'
import { type TableMap, tableMap } from './table-kernels.ts'

/** A table that enters one clique: a fixed one, or a slot's of the run. */
export type FixedEntry = { values: Float64Array; map: TableMap }
export type SlotEntry = { name: string; map: TableMap }

/** What one clique needs in a run besides its shape. */
export type CliquePlan = {
  /** Product of the fixed tables over the clique's own variable alone. */
  fixedOwn: Float64Array | null
  fixed: FixedEntry | null
  slots: readonly SlotEntry[]
  /** The one slot that covers the whole clique in its order, where nothing else has to be multiplied in. */
  readInPlace: string | null
  /** Where this clique's separator lies in its parent's table. */
  intoParent: TableMap | null
  children: readonly number[]
}

export type CompiledNetwork = {
  network: Network
  numberOf: ReadonlyMap<string, number>
  cards: readonly number[]
  visible: number
  tree: JunctionTree
  plans: readonly CliquePlan[]
  slotSizes: ReadonlyMap<string, number>
}

/** Cells of all cliques together that a network may need: 2^26 doubles are 512 MiB. */
const mostCells = 2 ** 26

/**
 * Compiles a network once, for any number of runs. `decompose: false` writes noisy-OR and noisy-MAX out in full, which the
 * most probable explanation needs. Problems: any fault of the network; 'too large' when its tables would not fit in memory.
 */
export function compileNetwork(network: Network, options?: { decompose?: boolean }): Answer<CompiledNetwork> {
  const fault = checkNetwork(network)
  if (fault) return { ok: false, problem: fault }
  const decompose = options?.decompose ?? true
  const wide = decompose ? null : tooWide(network)
  if (wide) return failed('too large', wide, 'its full table would not fit in memory')
  const { numberOf, cards, visible, factors } = asFactors(network, decompose)
  const slots = (network.slots ?? []).map(({ name, scope }) => {
    const numbers = scope.map(each => numberOf.get(each) ?? 0)
    return { name, scope: numbers, cards: numbers.map(variable => cards[variable] ?? 1) }
  })
  const tree = junctionTree(
    [...factors, ...slots].map(each => each.scope),
    cards,
  )
  if (tree.cells > mostCells) {
    return failed('too large', `${cards.length} variables`, `would need tables of ${tree.cells} cells`)
  }
  const fixedAt = grouped(factors, each => cliqueHolding(tree, each.scope))
  const slotsAt = grouped(slots, each => cliqueHolding(tree, each.scope))
  const childrenOf = grouped([...tree.cliques.keys()], at => tree.cliques[at]?.parent ?? -1)
  const plans = tree.cliques.map((clique, at): CliquePlan => {
    const parent = clique.parent === null ? undefined : tree.cliques[clique.parent]
    const separator = { scope: clique.separator, cards: clique.separatorCards }
    const here = fixedAt.get(at) ?? []
    const ownShape = { scope: [clique.own], cards: clique.cards.slice(-1) }
    const ofOwnAlone = here.filter(factor => factor.scope.every(variable => variable === clique.own))
    const fixed = merged(
      here.filter(factor => !ofOwnAlone.includes(factor)),
      clique,
    )
    const children = childrenOf.get(at) ?? []
    const entries = (slotsAt.get(at) ?? []).map(slot => ({ name: slot.name, map: tableMap(clique, slot) }))
    const [only] = entries
    const alone = entries.length === 1 && fixed === null && children.length === 0
    return {
      fixedOwn: ofOwnAlone.length > 0 ? product(ofOwnAlone, ownShape).values : null,
      fixed,
      slots: entries,
      readInPlace: alone && only?.map.step === 1 && only.map.base.length === 1 ? only.name : null,
      intoParent: parent ? tableMap(parent, separator) : null,
      children,
    }
  })
  return found({
    network,
    numberOf,
    cards,
    visible,
    tree,
    plans,
    slotSizes: new Map(slots.map(slot => [slot.name, sizeOf(slot.cards)])),
  })
}

/** The fixed tables of a clique as one, over no more variables than they have, in the clique's order. */
function merged(factors: readonly Factor[], clique: FactorShape): FixedEntry | null {
  if (factors.length === 0) return null
  const union = new Set(unionOf(factors).scope)
  const scope = clique.scope.filter(variable => union.has(variable))
  const cards = clique.cards.filter((_, at) => union.has(clique.scope[at] ?? -1))
  const table = product(factors, { scope, cards })
  return { values: table.values, map: tableMap(clique, table) }
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => number): Map<number, T[]> {
  const groups = new Map<number, T[]>()
  for (const item of items) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group) group.push(item)
    else groups.set(key, [item])
  }
  return groups
}

/** The first noisy child whose full table is beyond the limit, or null. */
function tooWide(network: Network): string | null {
  const states = new Map(network.variables.map(({ name, states }) => [name, states]))
  const noisy = [...(network.noisyOrs ?? []), ...(network.noisyMaxes ?? [])]
  const wide = noisy.find(({ child, causes }) => {
    const scope = [child, ...causes.map(cause => cause.parent)]
    return scope.reduce((size, name) => size * (states.get(name) ?? 1), 1) > mostCells
  })
  return wide?.child ?? null
}

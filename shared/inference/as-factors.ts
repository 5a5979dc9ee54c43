// Turns a checked network into factors over numbered variables. Noisy-OR and noisy-MAX children with many parents become
// chains with hidden variables, numbered after the network's own.
import type { Factor } from './factor.ts'
import type { Network, NoisyMax } from './network.ts'
import { noisyMaxChain, noisyMaxTable } from './noisy-max.ts'
import { asNoisyMax } from './noisy-or.ts'

export type NumberedNetwork = {
  numberOf: ReadonlyMap<string, number>
  /** States of every variable, hidden ones last. */
  cards: readonly number[]
  /** How many of `cards` are the network's own. */
  visible: number
  factors: readonly Factor[]
}

/** Up to this many parents the full table is no larger than the chain's cliques. */
const fullTableParents = 2

/** `decompose` false: full tables everywhere, so that there are no hidden variables. */
export function asFactors(network: Network, decompose: boolean): NumberedNetwork {
  const numberOf = new Map(network.variables.map(({ name }, number) => [name, number]))
  const cards = network.variables.map(({ states }) => states)
  const visible = cards.length
  const numbers = (names: readonly string[]) => names.map(name => numberOf.get(name) ?? 0)
  const over = (scope: readonly number[], values: ArrayLike<number>): Factor => ({
    scope,
    cards: scope.map(variable => cards[variable] ?? 1),
    values: Float64Array.from(values),
  })
  const spread = (noisy: NoisyMax): Factor[] => {
    const child = numberOf.get(noisy.child) ?? 0
    const parents = numbers(noisy.causes.map(cause => cause.parent))
    const childStates = cards[child] ?? 1
    const shape = { childStates, parentStates: parents.map(parent => cards[parent] ?? 1) }
    if (!decompose || parents.length <= fullTableParents) {
      return [over([...parents, child], noisyMaxTable(noisy, shape))]
    }
    let before: number | null = null
    return noisyMaxChain(noisy, shape).map((link, at) => {
      const after = at === parents.length - 1 ? child : cards.push(childStates) - 1
      const scope = [...(before === null ? [] : [before]), parents[at] ?? 0, after]
      before = after
      return over(scope, link.values)
    })
  }
  const factors = [
    ...(network.tables ?? []).map(({ child, parents, values }) => over(numbers([...parents, child]), values)),
    ...(network.noisyOrs ?? []).flatMap(noisy => spread(asNoisyMax(noisy))),
    ...(network.noisyMaxes ?? []).flatMap(spread),
    ...(network.factors ?? []).map(({ scope, values }) => over(numbers(scope), values)),
  ]
  return { numberOf, cards, visible, factors }
}

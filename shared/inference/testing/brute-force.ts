// The network by definition: every combination of states, its probability the product of all tables. The check for everything.
import type { Evidence, Network, NoisyMax } from '../network.ts'
import { asNoisyMax } from '../noisy-or.ts'

export type Assignment = Readonly<Record<string, number>>

/** P(effect of the parents = y) of a noisy-MAX by its story: every combination of independent effects, one a cause. */
function noisyMaxByStory(noisy: NoisyMax, states: Assignment, childStates: number): number {
  const columns = [
    Array.from(noisy.leak),
    ...noisy.causes.map(({ parent, effect }) => {
      const from = (states[parent] ?? 0) * childStates
      return Array.from(effect).slice(from, from + childStates)
    }),
  ]
  let largestOf = new Map<number, number>([[0, 1]])
  for (const column of columns) {
    const next = new Map<number, number>()
    for (const [so, chance] of largestOf) {
      column.forEach((each, y) => {
        const most = Math.max(so, y)
        next.set(most, (next.get(most) ?? 0) + chance * each)
      })
    }
    largestOf = next
  }
  return largestOf.get(states[noisy.child] ?? 0) ?? 0
}

/** Weight of one full assignment: product of all tables, factors and likelihoods. */
export function weightOf(network: Network, evidence: Evidence, states: Assignment): number {
  const cardOf = new Map(network.variables.map(({ name, states: card }) => [name, card]))
  const cell = (scope: readonly string[]) =>
    scope.reduce((index, name) => index * (cardOf.get(name) ?? 1) + (states[name] ?? 0), 0)
  let weight = 1
  for (const { child, parents, values } of network.tables ?? [])
    weight *= values[cell([...parents, child])] ?? 0
  for (const noisy of [...(network.noisyOrs ?? []).map(asNoisyMax), ...(network.noisyMaxes ?? [])]) {
    weight *= noisyMaxByStory(noisy, states, cardOf.get(noisy.child) ?? 1)
  }
  for (const { scope, values } of network.factors ?? []) weight *= values[cell(scope)] ?? 0
  for (const { name, scope } of network.slots ?? [])
    weight *= evidence.likelihoods?.[name]?.[cell(scope)] ?? 1
  for (const [name, state] of Object.entries(evidence.observed ?? {}))
    weight *= states[name] === state ? 1 : 0
  for (const [name, values] of Object.entries(evidence.soft ?? {})) weight *= values[states[name] ?? 0] ?? 0
  return weight
}

export type Weighing = { states: Assignment; weight: number }

/** Every assignment with its weight. */
export function enumerate(network: Network, evidence: Evidence): Weighing[] {
  let assignments: Assignment[] = [{}]
  for (const { name, states } of network.variables) {
    assignments = assignments.flatMap(so =>
      Array.from({ length: states }, (_, at) => ({ ...so, [name]: at })),
    )
  }
  return assignments.map(states => ({ states, weight: weightOf(network, evidence, states) }))
}

/** P(names | evidence), last name fastest, from all weighings. */
export function tally(network: Network, all: readonly Weighing[], names: readonly string[]): number[] {
  const cards = names.map(name => network.variables.find(each => each.name === name)?.states ?? 1)
  const values = Array.from({ length: cards.reduce((size, card) => size * card, 1) }, () => 0)
  let total = 0
  for (const { states, weight } of all) {
    const at = names.reduce((index, name, which) => index * (cards[which] ?? 1) + (states[name] ?? 0), 0)
    values[at] = (values[at] ?? 0) + weight
    total += weight
  }
  return values.map(value => value / total)
}

// Random small networks with every kind of part, and random evidence on them, from one seed.
import type { Evidence, Network, NoisyMax, NoisyOr, Potential, Slot, Table } from '../network.ts'

export type Random = () => number

/** Uniform numbers in [0, 1) from a 32-bit seed (mulberry32). */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

const below = (random: Random, limit: number): number => Math.floor(random() * limit)

/** A distribution, at times with zeros in it. */
function distribution(random: Random, states: number): number[] {
  const sure = below(random, states)
  const raw = Array.from({ length: states }, (_, at) =>
    at !== sure && random() < 0.15 ? 0 : 0.01 + random() ** 3,
  )
  const sum = raw.reduce((total, value) => total + value, 0)
  return raw.map(value => value / sum)
}

const rows = (random: Random, count: number, states: number): number[] =>
  Array.from({ length: count }, () => distribution(random, states)).flat()

const someOf = <T>(random: Random, items: readonly T[], most: number): T[] => {
  const shuffled = items.map(item => ({ item, key: random() })).sort((a, b) => a.key - b.key)
  return shuffled.slice(0, below(random, Math.min(most, items.length) + 1)).map(({ item }) => item)
}

/** Up to seven variables of one to four states; tables, noisy-ORs, noisy-MAXes, a factor, a slot. */
export function randomNetwork(random: Random): Network {
  const variables = Array.from({ length: 2 + below(random, 6) }, (_, at) => ({
    name: `v${at}`,
    states: random() < 0.06 ? 1 : 2 + below(random, 3),
  }))
  const states = new Map(variables.map(variable => [variable.name, variable.states]))
  const size = (scope: readonly string[]) => scope.reduce((cells, name) => cells * (states.get(name) ?? 1), 1)
  const tables: Table[] = []
  const noisyOrs: NoisyOr[] = []
  const noisyMaxes: NoisyMax[] = []
  variables.forEach((variable, at) => {
    const kind = random()
    const noisy = kind < 0.4
    const earlier = variables.slice(0, at).map(each => each.name)
    const parents = someOf(random, earlier, noisy ? 6 : 3)
    const child = variable.name
    if (noisy && variable.states === 2 && kind < 0.25) {
      const causes = parents.map(parent => ({
        parent,
        chance:
          states.get(parent) === 2 && random() < 0.5
            ? random()
            : Array.from({ length: states.get(parent) ?? 1 }, () => (random() < 0.2 ? 0 : random())),
      }))
      noisyOrs.push({ child, leak: random() * 0.2, causes })
    } else if (noisy) {
      const causes = parents.map(parent => ({
        parent,
        effect: rows(random, states.get(parent) ?? 1, variable.states),
      }))
      noisyMaxes.push({ child, leak: distribution(random, variable.states), causes })
    } else tables.push({ child, parents, values: rows(random, size(parents), variable.states) })
  })
  const names = variables.map(each => each.name)
  const over = (scope: readonly string[]) => Array.from({ length: size(scope) }, () => 0.05 + random())
  const factors: Potential[] = []
  if (random() < 0.3) {
    const scope = someOf(random, names, 3)
    factors.push({ name: 'factor', scope, values: over(scope) })
  }
  const slots: Slot[] = random() < 0.5 ? [{ name: 'slot', scope: someOf(random, names, 3) }] : []
  return { variables, tables, noisyOrs, noisyMaxes, factors, slots }
}

/** Hard, soft and slot evidence on about a third of the variables; may be impossible. */
export function randomEvidence(random: Random, network: Network): Evidence {
  const observed: Record<string, number> = {}
  const soft: Record<string, number[]> = {}
  for (const { name, states } of network.variables) {
    const kind = random()
    if (kind < 0.2) observed[name] = below(random, states)
    else if (kind < 0.35) soft[name] = Array.from({ length: states }, () => (random() < 0.1 ? 0 : random()))
  }
  const likelihoods: Record<string, Float64Array> = {}
  for (const { name, scope } of network.slots ?? []) {
    const cardOf = new Map(network.variables.map(each => [each.name, each.states]))
    const size = scope.reduce((cells, each) => cells * (cardOf.get(each) ?? 1), 1)
    if (random() < 0.8) likelihoods[name] = Float64Array.from({ length: size }, () => random() ** 4)
  }
  return { observed, soft, likelihoods }
}

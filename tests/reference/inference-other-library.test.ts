// The same random networks and evidence through an independent public library, bayesjs (junction tree; it knows tables and
// hard evidence only). Its variables are given in our order, noisy-OR and noisy-MAX written out as tables.
import { type INetwork, type INode, inferences } from 'bayesjs'
import { expect, it } from 'vitest'
import { compileNetwork } from '../../shared/inference/compile.ts'
import type { Network, Table } from '../../shared/inference/network.ts'
import { noisyMaxTable } from '../../shared/inference/noisy-max.ts'
import { noisyOrTable } from '../../shared/inference/noisy-or.ts'
import { marginal } from '../../shared/inference/posterior.ts'
import { propagate } from '../../shared/inference/propagate.ts'
import { randomEvidence, randomFrom, randomNetwork } from '../../shared/inference/testing/random-network.ts'
import { valueOf } from '../../shared/inference/testing/value-of.ts'

const statesOf = (network: Network, name: string) =>
  network.variables.find(variable => variable.name === name)?.states ?? 1

function writtenOut(network: Network): Table[] {
  return [
    ...(network.tables ?? []),
    ...(network.noisyOrs ?? []).map(noisy => ({
      child: noisy.child,
      parents: noisy.causes.map(({ parent }) => parent),
      values: noisyOrTable(noisy),
    })),
    ...(network.noisyMaxes ?? []).map(noisy => {
      const parents = noisy.causes.map(({ parent }) => parent)
      const parentStates = parents.map(parent => statesOf(network, parent))
      const values = noisyMaxTable(noisy, { childStates: statesOf(network, noisy.child), parentStates })
      return { child: noisy.child, parents, values }
    }),
  ]
}

function inTheirWords(network: Network): INetwork {
  const named = (count: number) => Array.from({ length: count }, (_, state) => `${state}`)
  const nodes = writtenOut(network).map(({ child, parents, values }) => {
    const states = named(statesOf(network, child))
    const rowAt = (row: number) =>
      Object.fromEntries(states.map((state, at) => [state, values[row * states.length + at] ?? 0]))
    let combinations: Record<string, string>[] = [{}]
    for (const parent of parents) {
      combinations = combinations.flatMap(so =>
        named(statesOf(network, parent)).map(state => ({ ...so, [parent]: state })),
      )
    }
    // oxlint-disable-next-line unicorn/no-thenable -- the library's own word for a row's probabilities
    const given = combinations.map((when, row) => ({ when, then: rowAt(row) }))
    const node: INode = {
      id: child,
      states,
      parents: [...parents],
      cpt: parents.length === 0 ? rowAt(0) : given,
    }
    return [child, node] as const
  })
  return Object.fromEntries(nodes)
}

it('agrees with bayesjs on every marginal of 60 random networks', () => {
  let compared = 0
  let worst = 0
  for (let seed = 1; seed <= 60; seed += 1) {
    const random = randomFrom(seed)
    const { variables, tables = [], noisyOrs = [], noisyMaxes = [] } = randomNetwork(random)
    const network: Network = { variables, tables, noisyOrs, noisyMaxes }
    const { observed = {} } = randomEvidence(random, network)
    const answer = propagate(valueOf(compileNetwork(network)), { observed })
    if (!answer.ok) continue
    const theirs = inTheirWords(network)
    const given = Object.fromEntries(Object.entries(observed).map(([name, state]) => [name, `${state}`]))
    for (const { name } of variables.filter(variable => !(variable.name in observed))) {
      const ours = valueOf(marginal(answer.value, name))
      ours.forEach((value, state) => {
        const their = inferences.junctionTree.infer(theirs, { [name]: `${state}` }, given)
        worst = Math.max(worst, Math.abs(value - their))
        compared += 1
      })
    }
  }
  expect(compared).toBeGreaterThan(400)
  expect(worst).toBeLessThan(1e-9)
})

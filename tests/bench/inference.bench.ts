// Exact inference: agreement with enumeration on many random networks, and the time of a network of the diagnosis' size (one
// engine variable of 150 states, cylinders of 250, a yes-or-no for each pair of neighbours) as ratio to elimination without a
// tree, which has to start again for every marginal. PLUGTRAY_BENCH=short compares 500 networks instead of 10,000.
import { cpus } from 'node:os'
import { expect, it } from 'vitest'
import { compileNetwork } from '../../shared/inference/compile.ts'
import { expectedInformationOfTest } from '../../shared/inference/expected-information.ts'
import { product, sumOnto, unionOf } from '../../shared/inference/factor-algebra.ts'
import type { Factor } from '../../shared/inference/factor.ts'
import type { Network, Variable } from '../../shared/inference/network.ts'
import { allMarginals } from '../../shared/inference/posterior.ts'
import { propagate } from '../../shared/inference/propagate.ts'
import { againstEnumeration } from '../../shared/inference/testing/against-enumeration.ts'
import { randomFrom } from '../../shared/inference/testing/random-network.ts'
import { valueOf } from '../../shared/inference/testing/value-of.ts'
import { workspaceFor } from '../../shared/inference/workspace.ts'

const networks = process.env['PLUGTRAY_BENCH'] === 'short' ? 500 : 10_000

it(`agrees with enumeration on ${networks} random networks`, () => {
  let worst = 0
  let worstLog = 0
  let disagreed = 0
  let possible = 0
  for (let seed = 1; seed <= networks; seed += 1) {
    const one = againstEnumeration(seed)
    worst = Math.max(worst, one.worst)
    worstLog = Math.max(worstLog, one.worstLog)
    if (one.possible) possible += 1
    if (!one.agreeOnPossible) disagreed += 1
  }
  console.log(
    `${networks} networks (${possible} with possible evidence): largest difference of a probability ${worst.toExponential(1)}, ` +
      `of log P(evidence) ${worstLog.toExponential(1)}; impossible evidence judged differently ${disagreed} times`,
  )
  expect(worst).toBeLessThan(1e-9)
  expect(disagreed).toBe(0)
})

/** An engine of one row of cylinders a bank. */
function engineNetwork(
  cylinders: number,
  banks: number,
): { network: Network; likelihoods: Record<string, Float64Array> } {
  const random = randomFrom(cylinders)
  const perBank = cylinders / banks
  const all = Array.from({ length: cylinders }, (_, at) => at)
  const pairs = all.filter(at => (at + 1) % perBank !== 0)
  const variables: Variable[] = [
    { name: 'engine', states: 150 },
    ...pairs.map(at => ({ name: `pair${at}`, states: 2 })),
    ...all.map(at => ({ name: `cylinder${at}`, states: 250 })),
  ]
  const prior = ({ name, states }: Variable) => {
    const raw = Array.from({ length: states }, () => random() ** 6 + 1e-6)
    const sum = raw.reduce((total, value) => total + value, 0)
    return { child: name, parents: [], values: raw.map(value => value / sum) }
  }
  const slots = all.map(at => {
    const touching = pairs.filter(pair => pair === at || pair === at - 1).map(pair => `pair${pair}`)
    return { name: `seen${at}`, scope: ['engine', ...touching, `cylinder${at}`] }
  })
  const sizes = slots.map(slot => 150 * 2 ** (slot.scope.length - 2) * 250)
  const likelihoods = Object.fromEntries(
    slots.map((slot, at) => [slot.name, Float64Array.from({ length: sizes[at] ?? 0 }, () => random() ** 4)]),
  )
  return { network: { variables, tables: variables.map(prior), slots }, likelihoods }
}

/** One marginal by elimination from scratch: cylinders first, then pairs, the engine last. */
function byElimination(factors: readonly Factor[], order: readonly number[], asked: number): Float64Array {
  let left = [...factors]
  for (const variable of order.filter(each => each !== asked)) {
    const touched = left.filter(factor => factor.scope.includes(variable))
    const whole = product(touched, unionOf(touched))
    const kept = whole.scope.filter(each => each !== variable)
    left = [...left.filter(factor => !touched.includes(factor)), sumOnto(whole, kept)]
  }
  const last = product(left, unionOf(left))
  const sum = last.values.reduce((total, value) => total + value, 0)
  return last.values.map(value => value / sum)
}

function factorsOf(network: Network, likelihoods: Record<string, Float64Array>): Factor[] {
  const number = new Map(network.variables.map(({ name }, at) => [name, at]))
  const cards = network.variables.map(({ states }) => states)
  const over = (names: readonly string[], values: ArrayLike<number>): Factor => {
    const scope = names.map(name => number.get(name) ?? 0)
    return { scope, cards: scope.map(each => cards[each] ?? 1), values: Float64Array.from(values) }
  }
  return [
    ...(network.tables ?? []).map(({ child, parents, values }) => over([...parents, child], values)),
    ...(network.slots ?? []).map(({ name, scope }) => over(scope, likelihoods[name] ?? [])),
  ]
}

function median(rounds: number, work: () => unknown): number {
  const times = Array.from({ length: rounds + 1 }, () => {
    const begun = performance.now()
    work()
    return performance.now() - begun
  })
  return times.slice(1).sort((a, b) => a - b)[Math.floor(rounds / 2)] ?? Number.NaN
}

it.each([
  ['inline four', 4, 1],
  ['V8', 8, 2],
  ['V12', 12, 2],
])('all marginals of a %s', (name, cylinders, banks) => {
  const { network, likelihoods } = engineNetwork(cylinders, banks)
  const compiling = median(3, () => compileNetwork(network))
  const compiled = valueOf(compileNetwork(network))
  const work = workspaceFor(compiled)
  const run = () => valueOf(allMarginals(valueOf(propagate(compiled, { likelihoods }, work))))
  const firstBegun = performance.now()
  const marginals = run()
  const first = performance.now() - firstBegun
  const again = median(21, run)
  const anew = median(11, () => allMarginals(valueOf(propagate(compiled, { likelihoods }))))
  const factors = factorsOf(network, likelihoods)
  const order = network.variables.map((_, at) => at).reverse()
  let apart = 0
  const begun = performance.now()
  for (const [at, variable] of network.variables.entries()) {
    const theirs = byElimination(factors, order, at)
    theirs.forEach((value, state) => {
      apart = Math.max(apart, Math.abs(value - (marginals.get(variable.name)?.[state] ?? Number.NaN)))
    })
  }
  const baseline = performance.now() - begun
  const test = {
    scope: ['engine', 'cylinder1'],
    outcomes: 4,
    values: new Float64Array(150 * 250 * 4).fill(0.25),
  }
  const posterior = valueOf(propagate(compiled, { likelihoods }, work))
  const bits = median(11, () => expectedInformationOfTest(posterior, test, ['cylinder1']))
  const show = (ms: number) => `${ms.toFixed(1)} ms`
  console.log(
    `${name} on ${cpus()[0]?.model ?? 'unknown'}, Node ${process.version}: ${compiled.tree.cells} cells; compile ${show(compiling)}; ` +
      `first run ${show(first)}, again ${show(again)}, with new tables ${show(anew)}; elimination without a tree ${show(baseline)} ` +
      `(${(baseline / again).toFixed(0)} times); expected bits of one test ${show(bits)}; largest difference ${apart.toExponential(1)}`,
  )
  expect(apart).toBeLessThan(1e-9)
})

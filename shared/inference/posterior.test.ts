// Laws of exact inference on random networks, and what a run says to bad questions.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compileNetwork } from './compile.ts'
import type { Network } from './network.ts'
import { allMarginals, joint, marginal } from './posterior.ts'
import { propagate } from './propagate.ts'
import { againstEnumeration } from './testing/against-enumeration.ts'
import { randomEvidence, randomFrom, randomNetwork } from './testing/random-network.ts'
import { valueOf } from './testing/value-of.ts'
import { workspaceFor } from './workspace.ts'

const seeds = fc.integer({ min: 0, max: 2 ** 31 })

describe('a run on random networks', () => {
  it('equals enumeration in every marginal, in joints and in the probability of the evidence', () => {
    const runs = { possible: 0, impossible: 0 }
    fc.assert(
      fc.property(seeds, seed => {
        const { possible, agreeOnPossible, worst, worstLog } = againstEnumeration(seed)
        expect(agreeOnPossible).toBe(true)
        expect(worst).toBeLessThan(1e-9)
        expect(worstLog).toBeLessThan(1e-9)
        runs[possible ? 'possible' : 'impossible'] += 1
      }),
      { numRuns: 300 },
    )
    expect(runs.possible).toBeGreaterThan(150)
    expect(runs.impossible).toBeGreaterThan(3)
  })

  it('does not change with the order in which evidence is given, nor in a used workspace', () => {
    fc.assert(
      fc.property(seeds, seed => {
        const random = randomFrom(seed)
        const network = randomNetwork(random)
        const evidence = randomEvidence(random, network)
        const compiled = valueOf(compileNetwork(network))
        const turned = {
          likelihoods: evidence.likelihoods ?? {},
          soft: backwards(evidence.soft ?? {}),
          observed: backwards(evidence.observed ?? {}),
        }
        const work = workspaceFor(compiled)
        const one = propagate(compiled, evidence)
        propagate(compiled, {}, work)
        const other = propagate(compiled, turned, work)
        expect(one.ok).toBe(other.ok)
        if (!one.ok || !other.ok) return
        expect(other.value.logEvidence).toBe(one.value.logEvidence)
        expect(valueOf(allMarginals(other.value))).toEqual(valueOf(allMarginals(one.value)))
      }),
      { numRuns: 100 },
    )
  })

  it('sums to 1, and joints sum to their marginals', () => {
    fc.assert(
      fc.property(seeds, seed => {
        const random = randomFrom(seed)
        const network = randomNetwork(random)
        const answer = propagate(valueOf(compileNetwork(network)), randomEvidence(random, network))
        if (!answer.ok) return
        const marginals = valueOf(allMarginals(answer.value))
        for (const values of marginals.values()) expect(sum(values)).toBeCloseTo(1, 12)
        const [first, last] = [network.variables[0]?.name ?? '', network.variables.at(-1)?.name ?? '']
        const both = valueOf(joint(answer.value, [first, last]))
        const width = network.variables.at(-1)?.states ?? 1
        marginals.get(first)?.forEach((value, state) => {
          expect(sum(both.slice(state * width, (state + 1) * width))).toBeCloseTo(value, 12)
        })
      }),
      { numRuns: 100 },
    )
  })

  it('gives the prior without evidence, and an empty slot says nothing', () => {
    const prior = [0.2, 0.5, 0.3]
    const network: Network = {
      variables: [
        { name: 'cause', states: 3 },
        { name: 'sign', states: 2 },
      ],
      tables: [
        { child: 'cause', parents: [], values: prior },
        { child: 'sign', parents: ['cause'], values: [0.9, 0.1, 0.5, 0.5, 0, 1] },
      ],
      slots: [{ name: 'seen', scope: ['cause', 'sign'] }],
    }
    const posterior = valueOf(propagate(valueOf(compileNetwork(network))))
    const ours = valueOf(marginal(posterior, 'cause'))
    prior.forEach((value, state) => expect(ours[state]).toBeCloseTo(value, 14))
    expect(posterior.logEvidence).toBeCloseTo(0, 14)
  })
})

describe('numbers at the edge', () => {
  const chain = (length: number): Network => ({
    variables: Array.from({ length }, (_, at) => ({ name: `x${at}`, states: 2 })),
    tables: Array.from({ length }, (_, at) =>
      at === 0
        ? { child: 'x0', parents: [], values: [0.5, 0.5] }
        : { child: `x${at}`, parents: [`x${at - 1}`], values: [0.9, 0.1, 0.2, 0.8] },
    ),
  })

  it('keeps a chain of 2,000 variables whose evidence has a probability far below the smallest double', () => {
    const network = chain(2_000)
    const soft = Object.fromEntries(network.variables.map(({ name }) => [name, [1e-12, 3e-12]]))
    const posterior = valueOf(propagate(valueOf(compileNetwork(network)), { soft }))
    const scaled = Object.fromEntries(network.variables.map(({ name }) => [name, [1, 3]]))
    const same = valueOf(propagate(valueOf(compileNetwork(network)), { soft: scaled }))
    expect(posterior.logEvidence).toBeCloseTo(same.logEvidence + 2_000 * Math.log(1e-12), 6)
    expect(valueOf(marginal(posterior, 'x999'))[1]).toBeCloseTo(
      valueOf(marginal(same, 'x999'))[1] ?? Number.NaN,
      12,
    )
  })

  it('keeps forty opposed likelihoods on one variable', () => {
    const slots = Array.from({ length: 40 }, (_, at) => ({ name: `slot${at}`, scope: ['x0'] }))
    const network = { ...chain(1), slots }
    const likelihoods = Object.fromEntries(
      slots.map(({ name }, at) => [name, at % 2 ? Float64Array.of(1e-30, 1) : Float64Array.of(2, 1e-30)]),
    )
    const posterior = valueOf(propagate(valueOf(compileNetwork(network)), { likelihoods }))
    expect(valueOf(marginal(posterior, 'x0'))[0]).toBeCloseTo(2 ** 20 / (1 + 2 ** 20), 12)
    expect(posterior.logEvidence).toBeCloseTo(20 * Math.log(1e-30) + Math.log((1 + 2 ** 20) / 2), 6)
  })
})

describe('questions that have no answer', () => {
  const network: Network = {
    variables: [
      { name: 'a', states: 2 },
      { name: 'b', states: 2 },
    ],
    tables: [
      { child: 'a', parents: [], values: [1, 0] },
      { child: 'b', parents: ['a'], values: [0.5, 0.5, 0.5, 0.5] },
    ],
    slots: [{ name: 'seen', scope: ['a', 'b'] }],
  }
  const compiled = valueOf(compileNetwork(network))
  const kindOf = (answer: ReturnType<typeof propagate>) => (answer.ok ? 'answer' : answer.problem.kind)

  it.each([
    [{ observed: { a: 1 } }, 'impossible evidence'],
    [{ soft: { a: [0, 1] } }, 'impossible evidence'],
    [{ soft: { a: [0, 0] } }, 'impossible evidence'],
    [{ observed: { c: 0 } }, 'unknown variable'],
    [{ soft: { c: [1, 1] } }, 'unknown variable'],
    [{ observed: { a: 2 } }, 'bad evidence'],
    [{ observed: { a: 0.5 } }, 'bad evidence'],
    [{ soft: { a: [1] } }, 'bad evidence'],
    [{ soft: { a: [1, -1] } }, 'bad evidence'],
    [{ soft: { a: [1, Number.NaN] } }, 'bad evidence'],
    [{ likelihoods: { other: Float64Array.of(1) } }, 'unknown slot'],
    [{ likelihoods: { seen: Float64Array.of(1, 1) } }, 'bad evidence'],
    [{ likelihoods: { seen: Float64Array.of(1, 1, 1, Number.POSITIVE_INFINITY) } }, 'bad evidence'],
    [{ observed: { a: 0, b: 1 } }, 'answer'],
  ])('evidence %j: %s', (evidence, kind) => {
    expect(kindOf(propagate(compiled, evidence))).toBe(kind)
  })

  it('names an unknown variable, one asked for twice, and a posterior overtaken by a later run', () => {
    const work = workspaceFor(compiled)
    const posterior = valueOf(propagate(compiled, {}, work))
    expect(marginal(posterior, 'c')).toMatchObject({ problem: { kind: 'unknown variable', where: 'c' } })
    expect(joint(posterior, ['a', 'a'])).toMatchObject({ problem: { kind: 'duplicate name' } })
    propagate(compiled, {}, work)
    expect(marginal(posterior, 'a')).toMatchObject({ problem: { kind: 'stale posterior' } })
    expect(allMarginals(posterior)).toMatchObject({ problem: { kind: 'stale posterior' } })
  })
})

const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0)
const backwards = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
  Object.fromEntries(Object.entries(record).reverse())

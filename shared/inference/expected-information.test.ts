// Expected information against its definition by enumeration, and its laws.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { compileNetwork } from './compile.ts'
import { expectedInformation, expectedInformationOfTest } from './expected-information.ts'
import type { Network } from './network.ts'
import { propagate } from './propagate.ts'
import { enumerate, tally } from './testing/brute-force.ts'
import { randomEvidence, randomFrom, randomNetwork } from './testing/random-network.ts'
import { valueOf } from './testing/value-of.ts'

const entropy = (values: readonly number[]) =>
  values.reduce((bits, value) => (value > 0 ? bits - value * Math.log2(value) : bits), 0)

it('is the entropy of each less that of both together', () => {
  let compared = 0
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), seed => {
      const random = randomFrom(seed)
      const network = randomNetwork(random)
      const evidence = randomEvidence(random, network)
      const [test = '', ...targets] = network.variables.map(({ name }) => name).slice(0, 3)
      const answer = propagate(valueOf(compileNetwork(network)), evidence)
      if (!answer.ok) return
      const all = enumerate(network, evidence)
      const of = (names: readonly string[]) => entropy(tally(network, all, names))
      const bits = valueOf(expectedInformation(answer.value, test, targets))
      expect(bits).toBeCloseTo(of([test]) + of(targets) - of([test, ...targets]), 9)
      compared += 1
    }),
    { numRuns: 150 },
  )
  expect(compared).toBeGreaterThan(75)
})

it('of a test that is no variable equals that of the same test added to the network', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), seed => {
      const random = randomFrom(seed)
      const network = randomNetwork(random)
      const names = network.variables.map(({ name }) => name)
      const scope = [names.at(-1) ?? '', ...(random() < 0.5 && names.length > 2 ? [names[0] ?? ''] : [])]
      const rows = scope.reduce(
        (size, name) => size * (network.variables.find(v => v.name === name)?.states ?? 1),
        1,
      )
      const values = Array.from({ length: rows }, () => {
        const good = random()
        return [good, (1 - good) * 0.7, (1 - good) * 0.3]
      }).flat()
      const withTest: Network = {
        ...network,
        variables: [...network.variables, { name: 'test', states: 3 }],
        tables: [...(network.tables ?? []), { child: 'test', parents: scope, values }],
      }
      const targets = [names[0] ?? '', names[1] ?? '']
      const bare = valueOf(propagate(valueOf(compileNetwork(network))))
      const more = valueOf(propagate(valueOf(compileNetwork(withTest))))
      expect(valueOf(expectedInformationOfTest(bare, { scope, outcomes: 3, values }, targets))).toBeCloseTo(
        valueOf(expectedInformation(more, 'test', targets)),
        9,
      )
    }),
    { numRuns: 150 },
  )
})

it('is 0 for a test that ignores the cause, one bit for a sure answer to an even question', () => {
  const network: Network = {
    variables: [{ name: 'cause', states: 2 }],
    tables: [{ child: 'cause', parents: [], values: [0.5, 0.5] }],
  }
  const posterior = valueOf(propagate(valueOf(compileNetwork(network))))
  const bits = (values: number[]) =>
    expectedInformationOfTest(posterior, { scope: ['cause'], outcomes: 2, values }, ['cause'])
  expect(valueOf(bits([0.3, 0.7, 0.3, 0.7]))).toBe(0)
  expect(valueOf(bits([1, 0, 0, 1]))).toBe(1)
  expect(bits([1, 0, 0, 0.9])).toMatchObject({ problem: { kind: 'bad table' } })
  expect(expectedInformation(posterior, 'cause', ['cause'])).toMatchObject({
    problem: { kind: 'duplicate name' },
  })
})

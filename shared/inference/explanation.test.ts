// The most probable explanation against enumeration, and where it has to be asked differently.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { compileNetwork } from './compile.ts'
import { mostProbableExplanation } from './explanation.ts'
import { enumerate } from './testing/brute-force.ts'
import { randomEvidence, randomFrom, randomNetwork } from './testing/random-network.ts'
import { valueOf } from './testing/value-of.ts'

it('is as probable as the best of all assignments, and says its own probability', () => {
  let impossible = 0
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), seed => {
      const random = randomFrom(seed)
      const network = randomNetwork(random)
      const evidence = randomEvidence(random, network)
      const all = enumerate(network, evidence)
      const best = Math.max(...all.map(({ weight }) => weight))
      const answer = mostProbableExplanation(valueOf(compileNetwork(network, { decompose: false })), evidence)
      expect(answer.ok).toBe(best > 0)
      if (best === 0) {
        impossible += 1
        return
      }
      const { states, logProbability } = valueOf(answer)
      const same = all.find(each =>
        Object.entries(each.states).every(([name, at]) => states.get(name) === at),
      )
      expect(Math.log(same?.weight ?? 0)).toBeCloseTo(Math.log(best), 9)
      expect(logProbability).toBeCloseTo(Math.log(best), 9)
    }),
    { numRuns: 200 },
  )
  expect(impossible).toBeGreaterThan(0)
})

it('refuses a network with hidden variables, whose states would count too', () => {
  const names = ['a', 'b', 'c', 'd']
  const network = {
    variables: [...names, 'sign'].map(name => ({ name, states: 2 })),
    tables: names.map(child => ({ child, parents: [], values: [0.9, 0.1] })),
    noisyOrs: [{ child: 'sign', leak: 0.05, causes: names.map(parent => ({ parent, chance: 0.8 })) }],
  }
  const hidden = mostProbableExplanation(valueOf(compileNetwork(network)), { observed: { sign: 1 } })
  expect(hidden).toMatchObject({ problem: { kind: 'hidden variables' } })
  const full = valueOf(compileNetwork(network, { decompose: false }))
  const { states } = valueOf(mostProbableExplanation(full, { observed: { sign: 1 } }))
  expect(names.filter(name => states.get(name) === 1)).toHaveLength(1)
})

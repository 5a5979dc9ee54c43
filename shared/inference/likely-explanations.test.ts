// The likely explanations against enumeration: all of them, none besides, with their chances.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { compileNetwork } from './compile.ts'
import { likelyExplanations } from './likely-explanations.ts'
import { joint } from './posterior.ts'
import { propagate } from './propagate.ts'
import { enumerate } from './testing/brute-force.ts'
import { randomEvidence, randomFrom, randomNetwork } from './testing/random-network.ts'
import { valueOf } from './testing/value-of.ts'

it('are exactly those that reach the chance, the likeliest first', () => {
  let compared = 0
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), seed => {
      const random = randomFrom(seed)
      const network = randomNetwork(random)
      const evidence = randomEvidence(random, network)
      const answer = propagate(valueOf(compileNetwork(network, { decompose: false })), evidence)
      if (!answer.ok) return
      // Reading a joint settles a table on the way: the explanations must not change by it.
      if (random() < 0.5) joint(answer.value, network.variables.map(({ name }) => name).slice(0, 2))
      const all = enumerate(network, evidence)
      const total = all.reduce((sum, { weight }) => sum + weight, 0)
      // A limit that no chance comes near, so that rounding cannot decide.
      const limit = 0.0123456789
      const expected = all.map(({ weight }) => weight / total).filter(chance => chance >= limit)
      const ours = valueOf(likelyExplanations(answer.value, limit))
      expect(ours).toHaveLength(expected.length)
      expected.sort((a, b) => b - a).forEach((chance, at) => expect(ours[at]?.chance).toBeCloseTo(chance, 9))
      const [best] = ours
      const same = all.find(each =>
        network.variables.every(({ name }, at) => each.states[name] === best?.states[at]),
      )
      expect((same?.weight ?? 0) / total).toBeCloseTo(best ? best.chance : 0, 9)
      compared += 1
    }),
    { numRuns: 150 },
  )
  expect(compared).toBeGreaterThan(75)
})

it('asks for a chance that can be listed', () => {
  const network = {
    variables: [{ name: 'a', states: 2 }],
    tables: [{ child: 'a', parents: [], values: [0.5, 0.5] }],
  }
  const posterior = valueOf(propagate(valueOf(compileNetwork(network))))
  expect(likelyExplanations(posterior, 0)).toMatchObject({ problem: { kind: 'bad evidence' } })
  expect(valueOf(likelyExplanations(posterior, 0.5))).toHaveLength(2)
  expect(valueOf(likelyExplanations(posterior, 0.6))).toHaveLength(0)
})

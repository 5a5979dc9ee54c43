// Noisy-OR and noisy-MAX equal their full tables, whether written out or decomposed, and stay cheap with many parents.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compileNetwork } from './compile.ts'
import type { Network, NoisyMax, NoisyOr } from './network.ts'
import { noisyMaxTable } from './noisy-max.ts'
import { asNoisyMax, noisyOrTable } from './noisy-or.ts'
import { joint, marginal } from './posterior.ts'
import { propagate } from './propagate.ts'
import { randomFrom } from './testing/random-network.ts'
import { valueOf } from './testing/value-of.ts'

const chance = fc.double({ min: 0, max: 1, noNaN: true })
/** Largest difference between two tables; infinite where their lengths differ. */
const apart = (ours: ArrayLike<number>, theirs: ArrayLike<number>): number =>
  ours.length === theirs.length
    ? Math.max(...Array.from(theirs, (value, at) => Math.abs(value - (ours[at] ?? Number.NaN))))
    : Number.POSITIVE_INFINITY
const parentsNamed = (count: number) => Array.from({ length: count }, (_, at) => `p${at}`)
const uniform = (states: number) => Array.from({ length: states }, () => 1 / states)

describe('noisy-OR', () => {
  it('has the table of the formula by hand: two causes and a leak', () => {
    const table = noisyOrTable({
      child: 'y',
      leak: 0.1,
      causes: [
        { parent: 'a', chance: 0.8 },
        { parent: 'b', chance: 0.5 },
      ],
    })
    expect(apart(table, [0.9, 0.1, 0.45, 0.55, 0.18, 0.82, 0.09, 0.91])).toBeLessThan(1e-12)
  })

  it('equals its full table: as a noisy-MAX, and decomposed in a network', () => {
    fc.assert(
      fc.property(fc.array(chance, { minLength: 1, maxLength: 7 }), chance, (chances, leak) => {
        const causes = chances.map((each, at) => ({ parent: `p${at}`, chance: each }))
        const noisy: NoisyOr = { child: 'y', leak, causes }
        const table = noisyOrTable(noisy)
        const shape = { childStates: 2, parentStates: chances.map(() => 2) }
        expect(apart(noisyMaxTable(asNoisyMax(noisy), shape), table)).toBeLessThan(1e-12)
        const names = parentsNamed(chances.length)
        const variables = [...names, 'y'].map(name => ({ name, states: 2 }))
        const tables = names.map(child => ({ child, parents: [], values: uniform(2) }))
        const network: Network = { variables, tables, noisyOrs: [noisy] }
        const whole = valueOf(joint(valueOf(propagate(valueOf(compileNetwork(network)))), [...names, 'y']))
        const scaled = whole.map(value => value * 2 ** chances.length)
        expect(apart(scaled, table)).toBeLessThan(1e-12)
      }),
      { numRuns: 60 },
    )
  })

  it('with thirty causes costs thirty small tables', () => {
    const names = parentsNamed(30)
    const network: Network = {
      variables: [...names, 'y'].map(name => ({ name, states: 2 })),
      tables: names.map(child => ({ child, parents: [], values: [0.9, 0.1] })),
      noisyOrs: [{ child: 'y', leak: 0.02, causes: names.map(parent => ({ parent, chance: 0.5 })) }],
    }
    const compiled = valueOf(compileNetwork(network))
    expect(compiled.tree.cells).toBeLessThan(1_000)
    expect(valueOf(marginal(valueOf(propagate(compiled)), 'y'))[0]).toBeCloseTo(0.98 * 0.95 ** 30, 12)
    const seen = valueOf(propagate(compiled, { observed: { y: 0 } }))
    expect(valueOf(marginal(seen, 'p7'))[1]).toBeCloseTo(0.05 / 0.95, 12)
  })
})

describe('noisy-MAX', () => {
  it('decomposed equals its full table, with any numbers of states', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 3, maxLength: 5 }),
        (seed, states) => {
          const random = randomFrom(seed)
          const childStates = 2 + Math.floor(random() * 3)
          const row = () => {
            const raw = Array.from({ length: childStates }, random)
            const sum = raw.reduce((total, value) => total + value, 0)
            return raw.map(value => value / sum)
          }
          const names = parentsNamed(states.length)
          const causes = states.map((count, at) => ({
            parent: `p${at}`,
            effect: Array.from({ length: count }, row).flat(),
          }))
          const noisy: NoisyMax = { child: 'y', leak: row(), causes }
          const network: Network = {
            variables: [
              ...names.map((name, at) => ({ name, states: states[at] ?? 1 })),
              { name: 'y', states: childStates },
            ],
            tables: names.map((child, at) => ({ child, parents: [], values: uniform(states[at] ?? 1) })),
            noisyMaxes: [noisy],
          }
          const compiled = valueOf(compileNetwork(network))
          expect(compiled.cards.length).toBeGreaterThan(compiled.visible)
          const whole = valueOf(joint(valueOf(propagate(compiled)), [...names, 'y']))
          const rows = states.reduce((product, count) => product * count, 1)
          const table = noisyMaxTable(noisy, { childStates, parentStates: states })
          const scaled = whole.map(value => value * rows)
          expect(apart(scaled, table)).toBeLessThan(1e-12)
        },
      ),
      { numRuns: 60 },
    )
  })
})

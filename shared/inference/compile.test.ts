// What is wrong with a network is named; what is right is compiled small.
import { describe, expect, it } from 'vitest'
import { compileNetwork } from './compile.ts'
import type { Network } from './network.ts'
import { valueOf } from './testing/value-of.ts'

const a = { name: 'a', states: 2 }
const b = { name: 'b', states: 3 }
const priorA = { child: 'a', parents: [], values: [0.4, 0.6] }
const givenA = { child: 'b', parents: ['a'], values: [0.2, 0.3, 0.5, 1, 0, 0] }
const sound: Network = { variables: [a, b], tables: [priorA, givenA] }

const faults: [string, Network, string, string][] = [
  ['the same name twice', { ...sound, variables: [a, b, a] }, 'duplicate name', 'a'],
  ['no state', { variables: [{ name: 'a', states: 0 }], tables: [] }, 'bad variable', 'a'],
  ['half a state', { variables: [{ name: 'a', states: 1.5 }], tables: [] }, 'bad variable', 'a'],
  ['a row off 1', { ...sound, tables: [{ ...priorA, values: [0.4, 0.5] }, givenA] }, 'bad table', 'a'],
  ['a negative entry', { ...sound, tables: [{ ...priorA, values: [1.4, -0.4] }, givenA] }, 'bad table', 'a'],
  ['a missing value', { ...sound, tables: [priorA, { ...givenA, values: [1, 0, 0] }] }, 'bad table', 'b'],
  [
    'an unknown parent',
    { ...sound, tables: [priorA, { ...givenA, parents: ['c'] }] },
    'unknown variable',
    'c',
  ],
  [
    'a parent twice',
    { ...sound, tables: [priorA, { ...givenA, parents: ['a', 'a'] }] },
    'bad table',
    'the table of b',
  ],
  ['no table', { ...sound, tables: [priorA] }, 'no table', 'b'],
  ['two tables', { ...sound, tables: [priorA, priorA, givenA] }, 'duplicate name', 'a'],
  [
    'a cycle',
    {
      ...sound,
      tables: [{ child: 'a', parents: ['b'], values: [1, 0, 1, 0, 1, 0] }, givenA],
    },
    'cycle',
    'a',
  ],
  [
    'a noisy-OR child with three states',
    { ...sound, tables: [priorA], noisyOrs: [{ child: 'b', leak: 0, causes: [] }] },
    'bad table',
    'b',
  ],
  ['a leak above 1', { variables: [a], noisyOrs: [{ child: 'a', leak: 1.1, causes: [] }] }, 'bad table', 'a'],
  [
    'a chance too few',
    {
      variables: [a, b],
      tables: [{ child: 'b', parents: [], values: [1, 0, 0] }],
      noisyOrs: [{ child: 'a', leak: 0, causes: [{ parent: 'b', chance: 0.5 }] }],
    },
    'bad table',
    'a',
  ],
  [
    'an effect that is no distribution',
    {
      ...sound,
      tables: [priorA],
      noisyMaxes: [{ child: 'b', leak: [1, 0, 0], causes: [{ parent: 'a', effect: [1, 0, 0, 1, 1, 0] }] }],
    },
    'bad table',
    'b',
  ],
  [
    'a factor that is 0 everywhere',
    { ...sound, factors: [{ name: 'f', scope: ['a'], values: [0, 0] }] },
    'bad table',
    'f',
  ],
  ['a slot over an unknown', { ...sound, slots: [{ name: 's', scope: ['c'] }] }, 'unknown variable', 'c'],
  [
    'two slots of one name',
    {
      ...sound,
      slots: [
        { name: 's', scope: ['a'] },
        { name: 's', scope: ['b'] },
      ],
    },
    'duplicate name',
    's',
  ],
  [
    'more than fits in memory',
    {
      variables: Array.from({ length: 30 }, (_, at) => ({ name: `x${at}`, states: 2 })),
      factors: Array.from({ length: 30 }, (_, at) => ({ name: `f${at}`, scope: [`x${at}`], values: [1, 1] })),
      slots: [{ name: 'all', scope: Array.from({ length: 30 }, (_, at) => `x${at}`) }],
    },
    'too large',
    '30 variables',
  ],
]

describe('a faulty network', () => {
  it.each(faults)('%s', (_what, network, kind, where) => {
    expect(compileNetwork(network)).toMatchObject({ ok: false, problem: { kind, where } })
  })
})

it('keeps the tables of cylinders that share an engine and their neighbours apart', () => {
  const cylinders = [0, 1, 2, 3, 4, 5]
  const pairs = cylinders.slice(1)
  const variables = [
    { name: 'engine', states: 15 },
    ...pairs.map(at => ({ name: `pair${at}`, states: 2 })),
    ...cylinders.map(at => ({ name: `cylinder${at}`, states: 25 })),
  ]
  const network: Network = {
    variables,
    factors: variables.map(({ name, states }) => ({
      name: `prior ${name}`,
      scope: [name],
      values: Array.from({ length: states }, () => 1),
    })),
    slots: cylinders.map(at => ({
      name: `seen${at}`,
      scope: [
        'engine',
        ...[at, at + 1].flatMap(pair => (pairs.includes(pair) ? [`pair${pair}`] : [])),
        `cylinder${at}`,
      ],
    })),
  }
  const { tree, plans } = valueOf(compileNetwork(network))
  const likelihoods = 4 * 15 * 4 * 25 + 2 * 15 * 2 * 25
  expect(tree.cells).toBeLessThan(likelihoods * 1.1)
  expect(plans.filter(plan => plan.readInPlace !== null).length).toBeGreaterThanOrEqual(4)
})

// From a network of two cylinders and a gauge that may read low to explanations by fault.
import { expect, it } from 'vitest'
import { compileNetwork } from '../../inference/compile.ts'
import { propagate } from '../../inference/propagate.ts'
import { valueOf } from '../../inference/testing/value-of.ts'
import { explanationsOf } from './explanations-of.ts'
import { faultKey } from './planning-view.ts'

const cylinder = ['sound', 'rings', 'valve']
const compiled = valueOf(
  compileNetwork({
    variables: [
      { name: 'gauge', states: 2 },
      { name: '1', states: 3 },
      { name: '2', states: 3 },
    ],
    tables: [
      { child: 'gauge', parents: [], values: [0.9, 0.1] },
      { child: '1', parents: [], values: [0.8, 0.15, 0.05] },
      { child: '2', parents: [], values: [0.8, 0.15, 0.05] },
    ],
  }),
)
const faultsOf = (variable: string, state: number) =>
  variable === 'gauge' || state === 0 ? [] : [{ cause: cylinder[state] ?? '', cylinder: Number(variable) }]

it('adds up what differs only in the gauge, likeliest first, with faults of both cylinders', () => {
  const all = valueOf(explanationsOf(valueOf(propagate(compiled)), faultsOf))
  expect(all[0]?.faults).toEqual([])
  expect(all[0]?.chance).toBeCloseTo(0.64, 12)
  const chances = new Map(all.map(({ faults, chance }) => [faults.map(faultKey).join(' + '), chance]))
  expect(chances.get('rings 1')).toBeCloseTo(0.12, 12)
  expect(chances.get('rings 1 + valve 2')).toBeCloseTo(0.0075 * 0.9, 12)
  // Valves of both, 0.0025 in all: with the low gauge 0.00025, too rare to be counted.
  expect(chances.get('valve 1 + valve 2')).toBeCloseTo(0.00225, 12)
})

it('follows the evidence', () => {
  const posterior = valueOf(propagate(compiled, { soft: { 1: [0.01, 1, 0.1] } }))
  expect(valueOf(explanationsOf(posterior, faultsOf))[0]?.faults).toEqual([{ cause: 'rings', cylinder: 1 }])
})

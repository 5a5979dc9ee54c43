import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Baseline, type Drift, driftOf } from './balance-drift.ts'

const along = (values: readonly number[]): Baseline[] => values.map((value, at) => ({ at, value }))
const line = (drift: Drift) => {
  if (drift.kind === 'none') throw new Error(`no line: ${drift.because}`)
  return drift
}
/** What a drift says of a baseline; a line also at one moment. */
const said = (drift: Drift) => [
  drift.kind,
  drift.wander,
  drift.kind === 'line' ? [drift.perCut, drift.baselineAt(1), drift.errorAt(1)] : drift.because,
]

it('finds the slope and the level of a creeping baseline', () => {
  const drift = driftOf(along([700, 710, 720, 730, 740]), 10)
  expect(drift).toMatchObject({ kind: 'line', perCut: 10, wander: 10, strays: 0 })
  expect(line(drift).baselineAt(2 + 1 / 3)).toBeCloseTo(723.333, 3)
})
it('is not misled by one misread baseline, and counts it', () => {
  const drift = driftOf(along([700, 710, 720, 930, 740, 750]), 10)
  expect(drift).toMatchObject({ kind: 'line', perCut: 10, strays: 1 })
})
it('says that no line fits where the idle was raised half way', () => {
  expect(driftOf(along([700, 701, 699, 700, 900, 901, 899, 900]), 10)).toMatchObject({
    kind: 'none',
    because: 'no line',
    wander: 10,
  })
})
it('draws the line through the middle where the engine hunts, and says how far it does', () => {
  const drift = driftOf(along([700, 760, 700, 760, 700, 760, 700, 760]), 10)
  expect(drift).toMatchObject({ kind: 'line', hunts: true })
  expect(line(drift).baselineAt(3.5)).toBeCloseTo(730, 0)
  expect(drift.wander).toBeGreaterThan(60)
})
it('does not take a baseline that bends for one that hunts', () => {
  expect(driftOf(along([1000, 940, 900, 875, 860, 850, 845, 842]), 10)).toMatchObject({
    kind: 'none',
    because: 'no line',
  })
})
it('draws no line through fewer than four moments', () => {
  expect(driftOf(along([700, 710, 720]), 10)).toMatchObject({ kind: 'none', because: 'too few' })
  expect(
    driftOf(
      [700, 710, 720, 730].map(value => ({ at: 1.5, value })),
      10,
    ).kind,
  ).toBe('none')
})
it('is less sure of the baseline at the ends than in the middle', () => {
  const drift = driftOf(along([700, 700, 700, 700, 700]), 10)
  expect(line(drift).errorAt(4)).toBeGreaterThan(line(drift).errorAt(2))
  expect(line(drift).errorAt(2)).toBeCloseTo((1.25 * 10) / Math.sqrt(5), 5)
})
it('follows thousands of baselines without looking at every pair', () => {
  const many = Array.from({ length: 10_000 }, (_, at) => ({ at, value: 700 + 0.01 * at + (at % 3) }))
  const drift = driftOf(many, 10)
  expect(line(drift).perCut).toBeCloseTo(0.01, 3)
})

describe('laws', () => {
  const baselines = fc.array(fc.integer({ min: 500, max: 1200 }), { minLength: 4, maxLength: 30 }).map(along)
  it('does not depend on the order of the list', () => {
    const shuffled = baselines.chain(all =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length })),
    )
    fc.assert(
      fc.property(shuffled, ([a, b]) => {
        expect(said(driftOf(b, 10))).toEqual(said(driftOf(a, 10)))
      }),
    )
  })
  it('adds a creep to the slope, and nothing to the scatter', () => {
    fc.assert(
      fc.property(baselines, fc.integer({ min: -40, max: 40 }), (all, creep) => {
        const one = driftOf(all, 10)
        const other = driftOf(
          all.map(({ at, value }) => ({ at, value: value + creep * at })),
          10,
        )
        expect(other.kind).toBe(one.kind)
        expect(other.wander).toBeCloseTo(one.wander, 4)
        const slope = (drift: Drift) => (drift.kind === 'line' ? drift.perCut : 0)
        expect(slope(other) - slope(one)).toBeCloseTo(one.kind === 'line' ? creep : 0, 4)
      }),
    )
  })
})

// The rank test against counts done by hand, against all orders there are, and as a law.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fallOf } from './rank-trend.ts'

const series = (values: readonly number[]) => values.map((value, at) => ({ at, value }))

function orders(values: readonly number[]): number[][] {
  return values.length < 2
    ? [[...values]]
    : values.flatMap((one, i) => orders(values.toSpliced(i, 1)).map(rest => [one, ...rest]))
}

describe('the chance of a fall', () => {
  it.each([
    [[4, 3, 2, 1], 1 / 24],
    [[5, 4, 3, 2, 1], 1 / 120],
    [[4, 5, 3, 2, 1], 5 / 120],
    [[1, 2, 3, 4], 1],
  ])('of %j is counted', (values, chance) => {
    expect(fallOf(series(values))?.chance).toBeCloseTo(chance, 12)
  })
  it('is the share of all orders that fall as much', () => {
    const all = orders([1, 2, 3, 4, 5, 6]).map(one => fallOf(series(one)))
    const taus = all.map(one => one?.tau ?? Number.NaN)
    for (const one of all.slice(0, 200)) {
      const share = taus.filter(tau => tau <= (one?.tau ?? Number.NaN) + 1e-12).length / all.length
      expect(one?.chance).toBeCloseTo(share, 10)
    }
  })
  it('with ties is near the share of all orders', () => {
    const tied = [1, 2, 2, 3, 4, 4, 5]
    const all = orders(tied).map(one => fallOf(series(one)))
    const falling = fallOf(series([5, 4, 4, 2, 3, 2, 1]))
    const share =
      all.filter(one => (one?.tau ?? 1) <= (falling?.tau ?? Number.NaN) + 1e-12).length / all.length
    expect(Math.abs((falling?.chance ?? 1) - share)).toBeLessThan(0.01)
  })
  it('is nothing without a sequence', () => {
    expect(fallOf(series([3, 2, 1]))).toBeNull()
    expect(fallOf(series([2, 2, 2, 2]))).toBeNull()
    expect(fallOf([4, 3, 2, 1].map(value => ({ at: 0, value })))).toBeNull()
  })
})

it('does not depend on the order the readings are given in, and is a probability', () => {
  const point = fc.record({ at: fc.integer({ min: 0, max: 9 }), value: fc.integer({ min: 90, max: 110 }) })
  fc.assert(
    fc.property(fc.array(point, { maxLength: 20 }), points => {
      const found = fallOf(points)
      expect(fallOf(points.toReversed())?.chance).toBe(found?.chance)
      const chance = found?.chance ?? 1
      expect(chance).toBeGreaterThanOrEqual(0)
      expect(chance).toBeLessThanOrEqual(1 + 1e-9)
    }),
  )
})

import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { againstMaximum, againstMinimum } from './calling.ts'
import { median, rangeOf, tidy } from './middle.ts'

describe('against a lower limit', () => {
  it.each([
    [75, 0, 'within'],
    [74.99, 0, 'outside'],
    [77.5, 2.5, 'within'],
    [77.4, 2.5, 'cannot be called'],
    [72.5, 2.5, 'cannot be called'],
    [72.4, 2.5, 'outside'],
  ] as const)('%d ± %d against at least 75 is %s', (value, plusMinus, call) => {
    expect(againstMinimum(value, plusMinus, 75)).toBe(call)
  })
})

describe('against an upper limit', () => {
  it.each([
    [20, 0, 'within'],
    [20.01, 0, 'outside'],
    [17, 3, 'within'],
    [17.1, 3, 'cannot be called'],
    [23, 3, 'cannot be called'],
    [23.1, 3, 'outside'],
  ] as const)('%d ± %d against at most 20 is %s', (value, plusMinus, call) => {
    expect(againstMaximum(value, plusMinus, 20)).toBe(call)
  })
})

it('never calls a number whose interval holds the limit, beyond its edge', () => {
  const number = fc.double({ min: 0, max: 300, noNaN: true }).map(tidy)
  fc.assert(
    fc.property(number, number, number, (value, plusMinus, limit) => {
      fc.pre(tidy(value - plusMinus) < limit && limit < tidy(value + plusMinus))
      expect(againstMinimum(value, plusMinus, limit)).toBe('cannot be called')
      expect(againstMaximum(value, plusMinus, limit)).toBe('cannot be called')
    }),
  )
})

describe('middle and range', () => {
  it('takes the middle, or the mean of the two in the middle', () => {
    expect(median([150, 118, 152])).toBe(150)
    expect(median([148, 150])).toBe(149)
    expect(median([])).toBeNaN()
  })
  it('gives no range to one value', () => {
    expect(rangeOf([148])).toBe(0)
    expect(rangeOf([])).toBe(0)
    expect(rangeOf([150, 144, 149])).toBe(6)
  })
})

// Combining uncertainties against the worked example of an end gauge, and guard bands against the decision rule. Sources:
// JCGM 100:2008, H.1 (numbers from memory, as printed there to two digits); 4.3.7 for bounds; ISO 14253-1 and JCGM 106:2012
// for guard bands as wide as the expanded uncertainty.
import { describe, expect, it } from 'vitest'
import { againstMaximum, againstMinimum } from '../../shared/gauges/calling.ts'
import { combined, intervalOf, ofBounds } from '../../shared/gauges/uncertainty.ts'

describe('JCGM 100, H.1: calibration of an end gauge', () => {
  it.each([
    [2e-6, 1.2e-6, 'coefficient of expansion, within 2e-6 per degree'],
    [1e-6, 0.58e-6, 'difference of the coefficients, within 1e-6 per degree'],
    [0.05, 0.029, 'difference of the temperatures, within 0.05 degrees'],
  ])('bounds of %d give %d: %s', (halfWidth, printed) => {
    expect(Number(ofBounds(halfWidth).toPrecision(2))).toBe(printed)
  })
  it('the difference of lengths: 5.8, 3.9 and 6.7 nm give 9.7 nm', () => {
    expect(combined([5.8, 3.9, 6.7])).toBeCloseTo(9.7, 1)
  })
  it('standard 25, difference 9.7, expansion 2.9 and temperature 16.6 nm give 32 nm', () => {
    expect(Math.round(combined([25, 9.7, 2.9, 16.6]))).toBe(32)
  })
})

describe('a compression gauge', () => {
  it('read to half a 2 psi division, class 1.6 of 300 psi: 2.8 psi standard, 5.7 psi with k = 2', () => {
    // Bounds 1 and 4.8 psi: sqrt(1/3 + 23.04/3) = 2.831.
    expect(combined([ofBounds(1), ofBounds(4.8)])).toBeCloseTo(2.831, 3)
    expect(intervalOf([1, 4.8])).toBeCloseTo(5.662, 3)
  })
  it('with one bound alone never goes beyond it, though k = 2 would', () => {
    expect(intervalOf([2.5])).toBe(2.5)
  })
})

describe('the decision rule with a guard band of U = 5.7 at a least value of 130', () => {
  const plusMinus = 5.7
  it.each([
    [135.7, 'within'],
    [135.6, 'cannot be called'],
    [130, 'cannot be called'],
    [124.3, 'cannot be called'],
    [124.2, 'outside'],
  ] as const)('%d is %s', (value, call) => {
    expect(againstMinimum(value, plusMinus, 130)).toBe(call)
  })
  it('mirrors for an upper limit', () => {
    for (const value of [110, 119, 125, 131, 141])
      expect(againstMaximum(value, plusMinus, 125)).toBe(againstMinimum(-value, plusMinus, -125))
  })
})

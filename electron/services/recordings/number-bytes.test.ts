import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { numberIn, wrong } from './number-bytes.ts'

const read = (text: string, decimal = '.') => {
  const bytes = new TextEncoder().encode(text)
  return numberIn(bytes, 0, bytes.length, decimal.charCodeAt(0))
}

describe('a number in bytes', () => {
  test.each([
    ['0', 0],
    ['-0.5', -0.5],
    ['+12.25', 12.25],
    [' 7 ', 7],
    ['"3.5"', 3.5],
    ['.25', 0.25],
    ['5.', 5],
    ['1e3', 1000],
    ['1.5E-4', 0.00015],
    ['-2.5e+2', -250],
    ['0.00000', 0],
    ['1e-400', 0],
  ])('%s', (text, value) => expect(read(text)).toBe(value))

  test('with a decimal comma', () => expect(read('-12,75', ',')).toBe(-12.75))

  test.each(['', '  ', '-', 'NaN', 'inf', '-Infinity', 'OL', '∞', 'n/a'])('"%s" is a missing sample', text =>
    expect(read(text)).toBeNaN(),
  )

  test.each(['abc', '1.2.3', '12a', '1e', '1e+', '--5', '0x10', '1 2'])('"%s" is wrong', text =>
    expect(read(text)).toBe(wrong),
  )

  test('is what JavaScript reads, to the last digits', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }), value => {
        const text = String(value)
        expect(Math.abs(read(text) - value)).toBeLessThanOrEqual(Math.abs(value) * 5e-16 + 1e-290)
      }),
    )
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000, max: 1_000_000 }),
        fc.integer({ min: 0, max: 6 }),
        (whole, digits) => {
          const text = (whole / 10 ** digits).toFixed(digits)
          expect(read(text)).toBeCloseTo(Number(text), 12)
        },
      ),
    )
  })
})

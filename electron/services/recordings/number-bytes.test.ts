import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fieldReader, numberIn, wrong } from './number-bytes.ts'

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

describe('a field read in one pass', () => {
  const odd = fc.constantFrom(
    '',
    '-',
    '5.',
    '.5',
    '--1',
    '1.2.3',
    ' 7 ',
    '"3"',
    'nan',
    '+4',
    '1e3',
    'x',
    '0'.repeat(40),
  )
  const plain = fc
    .tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.nat(999_999))
    .map(([whole, rest]) => `${whole}.${rest}`)
  const any = fc.oneof(
    odd,
    plain,
    fc.double().map(String),
    fc.string({ maxLength: 12 }).map(text => text.replaceAll(',', '')),
  )

  test('is what the careful reader says, and ends at its separator', () => {
    fc.assert(
      fc.property(any, any, (first, second) => {
        const bytes = new TextEncoder().encode(`${first},${second}`)
        const reader = fieldReader(44, 46)
        expect(reader.read(bytes, 0, bytes.length)).toBe(read(first))
        const end = new TextEncoder().encode(first).length
        expect(reader.end).toBe(end)
        expect(reader.read(bytes, end + 1, bytes.length)).toBe(read(second))
        expect(reader.end).toBe(bytes.length)
      }),
      { numRuns: 1000 },
    )
  })
})

// The check digit against 49 CFR 565.15(c), its printed example and others in public texts; and what it cannot see.
// Sources in data/vin.json.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { checkVin } from '../../shared/engine/vin.ts'
import { published } from './published.ts'

const data = published(
  'vin',
  z.object({
    assigned_values: z.record(z.string(), z.number()),
    weights: z.array(z.number()),
    valid: z.array(z.object({ vin: z.string(), check_digit: z.string() })),
    invalid: z.array(
      z.object({ vin: z.string(), why: z.string(), computed_check_digit: z.string().nullable() }),
    ),
    blind_spots: z.object({ examples: z.array(z.object({ typed: z.string(), why: z.string() })) }),
  }),
)

describe('published numbers', () => {
  it.each(data.valid.map(one => [one.vin, one.check_digit] as const))(
    '%s has check digit %s',
    (vin, digit) => {
      expect(checkVin(vin)).toEqual({ state: 'ok', expected: digit, normalised: vin })
      expect(checkVin(` ${vin.toLowerCase().slice(0, 8)}-${vin.slice(8)} `).state).toBe('ok')
    },
  )
})

const computed = data.invalid.filter(one => one.computed_check_digit !== null)
const unreadable = data.invalid.filter(one => one.computed_check_digit === null)

describe('faulty numbers', () => {
  it.each(computed.map(one => [one.why, one] as const))('%s', (_, one) => {
    expect(checkVin(one.vin)).toEqual({
      state: 'check digit differs',
      expected: one.computed_check_digit,
      normalised: one.vin,
    })
  })
  it.each(unreadable.map(one => [one.why, one.vin] as const))('%s', (_, vin) => {
    expect(checkVin(vin).state).toBe(vin.length === 17 ? 'bad characters' : 'wrong length')
  })
  it('that no check digit can tell pass, as they must', () => {
    for (const { typed } of data.blind_spots.examples) expect(checkVin(typed).state).toBe('ok')
  })
})

it('gives each character its value and each place its weight', () => {
  for (const [place, weight] of data.weights.entries())
    for (const [character, value] of Object.entries(data.assigned_values)) {
      const vin = `${'0'.repeat(place)}${character}${'0'.repeat(16 - place)}`
      const remainder = (value * weight) % 11
      expect(checkVin(vin).expected).toBe(remainder === 10 ? 'X' : String(remainder))
    }
})

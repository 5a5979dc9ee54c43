// Units against NIST SP 811 (appendix B factors, from memory), the atmosphere against the US Standard Atmosphere 1976
// table, vacuum at altitude against the same table, and the VIN check digit against 49 CFR 565.15 and its examples.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { checkVin } from '../../shared/engine/vin.ts'
import {
  standardPressureAt,
  toLength,
  toPressure,
  toTemperature,
  toVacuum,
} from '../../shared/units/convert.ts'
import { published } from './published.ts'

describe('conversion factors', () => {
  it.each([
    [toPressure({ value: 1, unit: 'psi' }, 'kPa'), 6.894757],
    [toPressure({ value: 1, unit: 'bar' }, 'psi'), 14.503774],
    [toVacuum({ value: 1, unit: 'inHg' }, 'kPa'), 3.386389],
    [toLength({ value: 1, unit: 'in' }, 'mm'), 25.4],
    [toTemperature({ value: 212, unit: '°F' }, '°C'), 100],
    [toTemperature({ value: -40, unit: '°C' }, '°F'), -40],
  ])('%d is the published %d', (ours, theirs) => {
    expect(ours).toBeCloseTo(theirs, 5)
  })
})

describe('US Standard Atmosphere 1976', () => {
  const { table_ft: rows } = published(
    'standard-atmosphere',
    z.object({ table_ft: z.array(z.object({ altitude_ft: z.number(), pressure_inHg: z.number() })) }),
  )
  it.each(rows.map(row => [row.altitude_ft, row.pressure_inHg] as const))(
    'at %d ft is %d inHg',
    (feet, inHg) => {
      expect(standardPressureAt({ value: feet, unit: 'ft' })).toBeCloseTo(inHg, 2)
    },
  )
})

describe('VIN check digit', () => {
  const { valid, invalid } = published(
    'vin',
    z.object({
      valid: z.array(z.object({ vin: z.string(), check_digit: z.string() })),
      invalid: z.array(z.object({ vin: z.string() })),
    }),
  )
  it.each(valid.map(one => [one.vin, one.check_digit] as const))('%s ends up with %s', (vin, digit) => {
    expect(checkVin(vin)).toMatchObject({ state: 'ok', expected: digit })
    expect(checkVin(` ${vin.toLowerCase().slice(0, 8)}-${vin.slice(8)} `).state).toBe('ok')
  })
  it.each(invalid.map(one => one.vin))('%s is not accepted', vin => {
    expect(checkVin(vin).state).not.toBe('ok')
  })
})

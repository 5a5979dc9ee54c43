// Units against NIST Special Publication 811, appendix B, and against the kPa and psi pairs printed in a service manual
// (data/unit-conversions.json says what was read and what was recomputed).
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import {
  toAltitude,
  toDistance,
  toLength,
  toPressure,
  toTemperature,
  toVacuum,
} from '../../shared/units/convert.ts'
import {
  altitudeSchema,
  distanceSchema,
  lengthSchema,
  pressureSchema,
  vacuumSchema,
} from '../../shared/units/quantity.ts'
import { halfUnit, published } from './published.ts'

const data = published(
  'unit-conversions',
  z.object({
    nist_sp_811: z.array(
      z.object({
        quantity: z.string(),
        from: z.string(),
        to: z.string(),
        factor: z.number(),
        exact: z.boolean(),
      }),
    ),
    fixed_temperatures: z.array(z.object({ celsius: z.number(), fahrenheit: z.number(), what: z.string() })),
    gauge_table: z.array(z.object({ psi: z.number(), kPa: z.number(), bar: z.number() })),
    manual_table: z.array(z.object({ kPa: z.number(), psi: z.number() })),
  }),
)

const factorOf = (quantity: string, from: string, to: string): number | null => {
  const one = { value: 1, unit: from }
  const other = { value: 1, unit: to }
  switch (quantity) {
    case 'pressure':
      return toPressure(pressureSchema.parse(one), pressureSchema.parse(other).unit)
    case 'vacuum':
      return toVacuum(vacuumSchema.parse(one), vacuumSchema.parse(other).unit)
    case 'length':
      return toLength(lengthSchema.parse(one), lengthSchema.parse(other).unit)
    case 'altitude':
      return toAltitude(altitudeSchema.parse(one), altitudeSchema.parse(other).unit)
    case 'distance':
      return toDistance(distanceSchema.parse(one), distanceSchema.parse(other).unit)
    default:
      throw new Error(`no conversion of ${quantity}`)
  }
}

describe('NIST SP 811, appendix B', () => {
  it.each(data.nist_sp_811.map(row => [`1 ${row.from} in ${row.to}`, row] as const))('%s', (_, row) => {
    const off = Math.abs((factorOf(row.quantity, row.from, row.to) ?? Number.NaN) - row.factor)
    // Factors that are not exact are printed to six decimals.
    expect(off).toBeLessThanOrEqual(row.exact ? row.factor * Number.EPSILON : halfUnit(6))
  })
  it.each(data.fixed_temperatures.map(row => [row.what, row] as const))(
    '%s',
    (_, { celsius, fahrenheit }) => {
      expect(toTemperature({ value: celsius, unit: '°C' }, '°F')).toBeCloseTo(fahrenheit, 10)
      expect(toTemperature({ value: fahrenheit, unit: '°F' }, '°C')).toBeCloseTo(celsius, 10)
    },
  )
})

describe('compression readings', () => {
  it.each(data.gauge_table.map(row => [row.psi, row] as const))('%d psi', (psi, row) => {
    const inKPa = toPressure({ value: psi, unit: 'psi' }, 'kPa')
    const inBar = toPressure({ value: psi, unit: 'psi' }, 'bar')
    expect(Math.abs(inKPa - row.kPa)).toBeLessThanOrEqual(halfUnit(1))
    expect(Math.abs(inBar - row.bar)).toBeLessThanOrEqual(halfUnit(2))
  })
  it.each(data.manual_table.map(row => [row.kPa, row.psi] as const))(
    '%d kPa is %d psi in the manual',
    (kPa, psi) => {
      const ours = toPressure({ value: kPa, unit: 'kPa' }, 'psi')
      expect(Math.abs(ours - psi)).toBeLessThanOrEqual(halfUnit(1))
    },
  )
})

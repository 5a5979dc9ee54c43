// Laws of conversion: there and back is the same number, the same unit changes nothing, more stays more.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  seaLevelPressure,
  standardPressureAt,
  toAltitude,
  toDistance,
  toLength,
  toPressure,
  toTemperature,
  toVacuum,
} from './convert.ts'
import { altitudeUnits, lengthUnits, pressureUnits, temperatureUnits, vacuumUnits } from './quantity.ts'

const value = fc.double({ min: -1e4, max: 1e4, noNaN: true })

type Scales = { there: (v: number) => number; back: (v: number) => number; same: (v: number) => number }

/** Any two scales of one kind of quantity. */
const between = <U extends string>(
  units: readonly U[],
  to: (quantity: { value: number; unit: U }, unit: U) => number,
): fc.Arbitrary<Scales> =>
  fc.tuple(fc.constantFrom(...units), fc.constantFrom(...units)).map(([a, b]) => ({
    there: v => to({ value: v, unit: a }, b),
    back: v => to({ value: v, unit: b }, a),
    same: v => to({ value: v, unit: a }, a),
  }))

describe.each([
  ['pressure', between(pressureUnits, toPressure)],
  ['vacuum', between(vacuumUnits, toVacuum)],
  ['length', between(lengthUnits, toLength)],
  ['temperature', between(temperatureUnits, toTemperature)],
  ['altitude', between(altitudeUnits, toAltitude)],
  ['distance', between(['km', 'mi'], (distance, unit) => toDistance(distance, unit) ?? Number.NaN)],
] as const)('conversion of %s', (_, scales) => {
  it('comes back, and leaves its own unit exactly alone', () => {
    fc.assert(
      fc.property(scales, value, ({ there, back, same }, v) => {
        expect(back(there(v))).toBeCloseTo(v, 8)
        expect(same(v)).toBe(v)
      }),
    )
  })
  it('keeps the order', () => {
    fc.assert(
      fc.property(scales, value, value, ({ there }, v, w) => {
        fc.pre(v < w - 1e-6)
        expect(there(v)).toBeLessThan(there(w))
      }),
    )
  })
})

it('keeps running hours apart from distances', () => {
  expect(toDistance({ value: 812, unit: 'h' }, 'h')).toBe(812)
  expect(toDistance({ value: 812, unit: 'h' }, 'km')).toBeNull()
  expect(toDistance({ value: 812, unit: 'mi' }, 'h')).toBeNull()
})

describe('the standard atmosphere', () => {
  it('thins with height, without a step, however high the number typed', () => {
    const height = fc.double({ min: -1000, max: 60_000, noNaN: true })
    fc.assert(
      fc.property(height, metres => {
        const here = standardPressureAt({ value: metres, unit: 'm' })
        const above = standardPressureAt({ value: metres + 1, unit: 'm' })
        expect(above).toBeLessThan(here)
        expect(here - above).toBeLessThan(0.005)
        expect(above).toBeGreaterThan(0)
      }),
    )
    expect(standardPressureAt({ value: 0, unit: 'ft' })).toBe(seaLevelPressure)
  })
})

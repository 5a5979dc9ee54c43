// Idle vacuum at altitude: the atmosphere there, the band that keeps the manifold's absolute pressure, and the trade rule
// of an inch less a thousand feet (US Army TM 9-4910-677-14&P). Sources in data/vacuum-altitude.json.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { atmosphereOf, idleBand } from '../../shared/gauges/atmosphere.ts'
import { standardPressureAt, toVacuum } from '../../shared/units/convert.ts'
import { halfUnit, published } from './published.ts'

const band = z.tuple([z.number(), z.number()])
const data = published(
  'vacuum-altitude',
  z.object({
    map_examples: z.array(z.object({ baro_kPa: z.number(), map_kPa: z.number(), vacuum_inHg: z.number() })),
    table: z.array(
      z.object({
        altitude_ft: z.number(),
        atmosphere_inHg: z.number(),
        rule_1_inHg_per_1000ft: band,
        same_absolute_manifold_pressure: band,
      }),
    ),
  }),
)

describe('at altitude', () => {
  it.each(data.table.map(row => [row.altitude_ft, row] as const))('of %d ft', (feet, row) => {
    const altitude = { value: feet, unit: 'ft' as const }
    const { low, high } = idleBand(atmosphereOf({ altitude }))
    const [expectedLow, expectedHigh] = row.same_absolute_manifold_pressure
    expect(Math.abs(standardPressureAt(altitude) - row.atmosphere_inHg)).toBeLessThanOrEqual(halfUnit(2))
    expect(Math.abs(low - expectedLow)).toBeLessThanOrEqual(halfUnit(2))
    expect(Math.abs(high - expectedHigh)).toBeLessThanOrEqual(halfUnit(2))
  })
  it.each(data.table.filter(row => row.altitude_ft <= 6000).map(row => [row.altitude_ft, row] as const))(
    'of %d ft agrees with an inch a thousand feet to about a tenth',
    (feet, row) => {
      const { low } = idleBand(atmosphereOf({ altitude: { value: feet, unit: 'ft' } }))
      expect(Math.abs(low - row.rule_1_inHg_per_1000ft[0])).toBeLessThan(0.15)
    },
  )
})

it.each(data.map_examples.map(row => [row.baro_kPa, row.map_kPa, row.vacuum_inHg] as const))(
  'a barometer of %d kPa over a manifold of %d kPa is %d inHg of vacuum',
  (barometer, manifold, inHg) => {
    const ours = toVacuum({ value: barometer - manifold, unit: 'kPa' }, 'inHg')
    expect(Math.abs(ours - inHg)).toBeLessThanOrEqual(halfUnit(3))
  },
)

// Idle vacuum at altitude: the atmosphere there, the band that keeps the manifold's absolute pressure, and the trade rule
// of an inch less a thousand feet (US Army TM 9-4910-677-14&P). Sources in data/vacuum-altitude.json.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { atmosphereOf, crankingBand, idleBand } from '../../shared/gauges/atmosphere.ts'
import { jobWith, inHg as inMercury, vacuum } from '../../shared/gauges/testing/evidence-job.ts'
import { judgeVacuum } from '../../shared/gauges/vacuum.ts'
import { vacuumBand } from '../../shared/gauges/bars.ts'
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
        same_fraction_of_atmosphere: band,
        max_possible_vacuum_inHg: z.number(),
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

describe('judged at altitude', () => {
  const rows = data.table.map(row => [row.altitude_ft, row] as const)
  it.each(rows)('of %d ft: drawn and judged by the same band, by altitude or by barometer', (feet, row) => {
    const [low, high] = row.same_absolute_manifold_pressure
    const middle = vacuum('idle', (low + high) / 2)
    const tooLow = vacuum('idle', low - 0.4)
    for (const circumstances of [
      { altitude: { value: feet, unit: 'ft' as const } },
      { barometer: inMercury(row.atmosphere_inHg) },
    ]) {
      const job = jobWith({ pulls: [middle], circumstances })
      const drawn = vacuumBand(job, 'as found')
      expect(Math.abs(drawn.low - low)).toBeLessThanOrEqual(2 * halfUnit(2))
      expect(Math.abs(drawn.to - row.max_possible_vacuum_inHg)).toBeLessThanOrEqual(halfUnit(2))
      expect(judgeVacuum(job, 'as found')).toMatchObject([{ rule: 'idle', verdict: 'within' }])
      expect(judgeVacuum({ ...job, pulls: [tooLow] }, 'as found')).toMatchObject([{ verdict: 'outside' }])
    }
  })
  it.each(rows)('of %d ft: nothing above the air there', (feet, row) => {
    const above = vacuum('idle', row.max_possible_vacuum_inHg + 0.1)
    const circumstances = { altitude: { value: feet, unit: 'ft' as const } }
    expect(judgeVacuum(jobWith({ pulls: [above], circumstances }), 'as found')).toMatchObject([
      { rule: 'possible at all, idle', about: 'reading' },
    ])
  })
  it.each(rows)('of %d ft: cranking vacuum follows the ratio of the pressures', (feet, row) => {
    const air = atmosphereOf({ altitude: { value: feet, unit: 'ft' } })
    // The table's band of 17 to 21 scaled by the ratio, which is wrong for idle and right for so small a reading.
    const { least, sure } = crankingBand(air, { least: 17, sure: 21 })
    expect(Math.abs(least - row.same_fraction_of_atmosphere[0])).toBeLessThanOrEqual(halfUnit(2))
    expect(Math.abs(sure - row.same_fraction_of_atmosphere[1])).toBeLessThanOrEqual(halfUnit(2))
  })
})

// Compression comparison rules against published worked sets, and readings at altitude. Sources in
// data/compression-theory.json: common practice, US Army TM 5-4210-230-14&P-1, vehicle makers, US Standard Atmosphere.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { atmosphereOf, pressureRatio } from '../../shared/gauges/atmosphere.ts'
import { againstHighest, againstLeast } from '../../shared/gauges/compression-comparison.ts'
import { compressionValues, isMeasured } from '../../shared/gauges/compression-values.ts'
import { judgeCompression } from '../../shared/gauges/compression.ts'
import { jobWith, onePullEach } from '../../shared/gauges/testing/evidence-job.ts'
import { tradeUnits } from '../../shared/gauges/shown.ts'
import { halfUnit, published } from './published.ts'

const cylinders = z.array(z.number())
const data = published(
  'compression-theory',
  z.object({
    rule_checks: z.array(
      z.object({
        name: z.string(),
        psi: z.array(z.number()),
        spread_psi: z.number(),
        lowest_percent_of_highest: z.number(),
        fails: z.object({
          spread_over_20_psi: cylinders,
          below_75_percent_of_highest: cylinders,
          below_100_psi: cylinders,
        }),
      }),
    ),
    altitude: z.object({ rows: z.array(z.object({ altitude_ft: z.number(), ratio: z.number() })) }),
  }),
)

const layoutOf = (count: number) =>
  count === 4 ? 'i4-1342' : count === 6 ? 'i6-153624' : 'v8-cross-oddeven-18436572'

/** The published sets give bare numbers, so the interval of a real gauge is taken away for them. */
function judgedAsNumbers(psi: readonly number[]) {
  const job = jobWith({ pulls: onePullEach(psi), layout: layoutOf(psi.length) })
  const values = compressionValues(job, 'as found')
    .filter(isMeasured)
    .map(one => ({ ...one, plusMinus: 0, between: 0 }))
  const setting = { stage: 'as found' as const, units: tradeUnits, circumstances: {} }
  return [...againstHighest(values, setting), ...againstLeast(values, setting)]
}

describe.each(data.rule_checks.map(row => [row.name, row] as const))('%s', (_name, row) => {
  const verdicts = judgedAsNumbers(row.psi)
  const failing = (rule: string, verdict = 'outside') =>
    verdicts.filter(one => one.rule === rule && one.verdict === verdict).map(one => one.cylinder)

  it('spread and share come out as published', () => {
    const below = verdicts.filter(one => one.rule === 'below highest').map(one => one.value)
    const shares = verdicts.filter(one => one.rule === 'share of highest').map(one => one.value)
    expect(Math.max(...below)).toBe(row.spread_psi)
    expect(Math.abs(Math.min(...shares) - row.lowest_percent_of_highest)).toBeLessThanOrEqual(halfUnit(1))
  })
  it('the same cylinders fail', () => {
    expect(failing('below highest')).toEqual(row.fails.spread_over_20_psi)
    expect(failing('share of highest')).toEqual(row.fails.below_75_percent_of_highest)
    expect(failing('usual floor', 'watch')).toEqual(row.fails.below_100_psi)
  })
  it('with a real gauge no verdict is turned round, only left open', () => {
    const job = jobWith({ pulls: onePullEach(row.psi), layout: layoutOf(row.psi.length) })
    const real = judgeCompression(job, 'as found')
    // The floor is not judged for a cylinder that its mates already show to be low.
    for (const exact of verdicts.filter(one => one.rule !== 'usual floor')) {
      const found = real.find(one => one.rule === exact.rule && one.cylinder === exact.cylinder)
      expect([exact.verdict, 'cannot be called']).toContain(found?.verdict)
    }
  })
})

it.each(data.altitude.rows.map(row => [row.altitude_ft, row.ratio] as const))(
  'at %d ft a reading is %d of the one at sea level',
  (feet, ratio) => {
    const ours = pressureRatio(atmosphereOf({ altitude: { value: feet, unit: 'ft' } }))
    expect(Math.abs(ours - ratio)).toBeLessThanOrEqual(halfUnit(4))
  },
)

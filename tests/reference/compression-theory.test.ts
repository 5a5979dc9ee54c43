// Compression and leakage arithmetic against tables recomputed from their formulas: polytropic compression, rule of thumb,
// altitude, oil volume, hose volume, percent lost, and every published comparison rule on the same worked sets. Sources
// in data/compression-theory.json.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { atmosphereOf } from '../../shared/gauges/atmosphere.ts'
import { hoseShare } from '../../shared/gauges/compression-build-up.ts'
import { againstHighest } from '../../shared/gauges/compression-comparison.ts'
import { oilLiftPercent, polytropicPsi, thumbPsi } from '../../shared/gauges/compression-estimates.ts'
import { compressionValues, isMeasured } from '../../shared/gauges/compression-values.ts'
import { holeMillimetres } from '../../shared/gauges/leak-down-hole.ts'
import { lossOf } from '../../shared/gauges/leak-down-values.ts'
import type { RuleChoice } from '../../shared/gauges/rule-choice-schema.ts'
import { tradeUnits } from '../../shared/gauges/shown.ts'
import { jobWith, onePullEach, psi } from '../../shared/gauges/testing/evidence-job.ts'
import { halfUnit, published } from './published.ts'

const cylinders = z.array(z.number())
const data = published(
  'compression-theory',
  z.object({
    constants: z.object({ kPa_per_psi: z.number() }),
    polytropic: z.object({
      rows: z.array(
        z.object({
          ratio: z.number(),
          gauge_psi: z.record(z.string(), z.number()),
          'rule_CRxATM+ATM+5': z.number(),
        }),
      ),
    }),
    first_puff_model: z.object({
      rows: z.array(
        z.object({
          clearance_cc: z.number(),
          hose_cc_beyond_valve: z.number(),
          first_over_final: z.number(),
        }),
      ),
    }),
    rule_checks: z.array(
      z.object({
        name: z.string(),
        psi: z.array(z.number()),
        lowest_percent_of_average: z.number(),
        fails: z.object({
          spread_over_20_psi: cylinders,
          spread_over_15_psi: cylinders,
          spread_over_10_psi: cylinders,
          below_70_percent_of_highest: cylinders,
          below_75_percent_of_highest: cylinders,
          below_90_percent_of_highest: cylinders,
          more_than_20_percent_below_average: cylinders,
        }),
      }),
    ),
    leakage_percent: z.array(
      z.object({ regulated_psi: z.number(), cylinder_psi: z.number(), leak_percent: z.number() }),
    ),
    leakage_orifice_model: z.array(
      z.object({ orifice_in: z.number(), reading: z.string(), equivalent_hole_diameter_mm: z.number() }),
    ),
    wet_test: z.object({
      effect_of_oil_volume: z.array(
        z.object({
          clearance_cc: z.number(),
          swept_cc: z.number(),
          'gauge_rise_percent_n1.25': z.number(),
        }),
      ),
    }),
  }),
)
/** Sea-level pressure of the US Standard Atmosphere 1976, 101.325 kPa. */
const air = 101.325 / data.constants.kPa_per_psi

describe.each(data.polytropic.rows.map(row => [row.ratio, row] as const))('%d:1', (ratio, row) => {
  it.each(Object.entries(row.gauge_psi))('with %s', (name, gauge) => {
    expect(Math.abs(polytropicPsi(ratio, air, Number(name.slice(2))) - gauge)).toBeLessThanOrEqual(
      halfUnit(1),
    )
  })
  it('by the rule of thumb, which takes the air as 14.7 psi', () => {
    expect(Math.abs(thumbPsi(ratio, 14.7) - row['rule_CRxATM+ATM+5'])).toBeLessThanOrEqual(halfUnit(1))
  })
})

it.each(data.wet_test.effect_of_oil_volume)(
  '15 ml of oil in $clearance_cc ml lift a reading by $["gauge_rise_percent_n1.25"] %',
  row => {
    const ours = oilLiftPercent(row.clearance_cc, row.swept_cc, 15) ?? Number.NaN
    expect(Math.abs(ours - row['gauge_rise_percent_n1.25'])).toBeLessThanOrEqual(halfUnit(1))
  },
)

it.each(data.first_puff_model.rows.filter(row => row.clearance_cc === 55))(
  'a hose of $hose_cc_beyond_valve ml takes the first puff to $first_over_final',
  row => {
    expect(Math.abs(hoseShare(row.hose_cc_beyond_valve) - row.first_over_final)).toBeLessThanOrEqual(
      halfUnit(3),
    )
  },
)

it.each(data.leakage_percent)('$cylinder_psi held of $regulated_psi psi is $leak_percent % lost', row => {
  const loss = lossOf(
    {},
    {
      id: 'leak-1',
      stage: 'as found',
      at: '2026-03-02T09:00:00Z',
      test: 'leak-down',
      cylinder: 1,
      entry: { form: 'differential', supply: psi(row.regulated_psi), held: psi(row.cylinder_psi) },
    },
  )
  expect(loss?.percent).toBeCloseTo(row.leak_percent, 6)
})

it.each(data.leakage_orifice_model)(
  '$reading through an orifice of $orifice_in in is a hole of $equivalent_hole_diameter_mm mm',
  row => {
    const [held = Number.NaN, supply = Number.NaN] = row.reading.split('/').map(Number)
    const ours = holeMillimetres(row.orifice_in * 25.4, supply, held, atmosphereOf({})) ?? Number.NaN
    expect(Math.abs(ours - row.equivalent_hole_diameter_mm)).toBeLessThanOrEqual(halfUnit(3))
  },
)

const layoutOf = (count: number) =>
  count === 4 ? 'i4-1342' : count === 6 ? 'i6-153624' : 'v8-cross-oddeven-18436572'

/** The sets give bare numbers, so the interval of a real gauge is taken away for them. */
function failing(finals: readonly number[], rules: RuleChoice, rule: string): number[] {
  const values = compressionValues(
    jobWith({ pulls: onePullEach(finals), layout: layoutOf(finals.length) }),
    'as found',
  )
    .filter(isMeasured)
    .map(one => ({ ...one, plusMinus: 0, between: 0 }))
  return againstHighest(values, { stage: 'as found', units: tradeUnits, circumstances: { rules } })
    .filter(one => one.rule === rule && one.verdict === 'outside')
    .map(one => one.cylinder)
}

describe.each(data.rule_checks.map(row => [row.name, row] as const))(
  'every rule set on: %s',
  (_name, row) => {
    const { fails } = row
    it.each([
      [{ compressionSpread: 'spread-20' }, 'below highest', fails.spread_over_20_psi],
      [{ compressionSpread: 'spread-15' }, 'below highest', fails.spread_over_15_psi],
      [{ compressionSpread: 'spread-10' }, 'below highest', fails.spread_over_10_psi],
      [{ compressionShare: 'highest-75' }, 'share of highest', fails.below_75_percent_of_highest],
      [{ compressionShare: 'highest-70-floor-100' }, 'share of highest', fails.below_70_percent_of_highest],
      [{ compressionShare: 'highest-90' }, 'share of highest', fails.below_90_percent_of_highest],
      [{ compressionShare: 'average-80' }, 'share of average', fails.more_than_20_percent_below_average],
    ] satisfies [RuleChoice, string, number[]][])('%j', (rules, rule, expected) => {
      expect(failing(row.psi, rules, rule)).toEqual(expected)
    })
  },
)

// Cylinder balance against two published worked cases; sources in data/worked-examples.json.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { balanceShares, judgeBalance } from '../../shared/gauges/balance.ts'
import { balanceValues } from '../../shared/gauges/balance-values.ts'
import { median } from '../../shared/gauges/middle.ts'
import { cut, jobWith } from '../../shared/gauges/testing/evidence-job.ts'
import { published } from './published.ts'

const data = published(
  'worked-examples',
  z.object({
    power_balance: z.array(
      z.object({
        base_rpm: z.number(),
        rpm_with_cylinder_off: z.array(z.number()),
        drop_rpm: z.array(z.number()),
        weakest_cylinder: z.number(),
      }),
    ),
  }),
)

const cases = data.power_balance.map(row => [`${row.rpm_with_cylinder_off.length} cylinders`, row] as const)

describe.each(cases)('%s', (_name, row) => {
  const job = jobWith({
    layout: row.drop_rpm.length === 6 ? 'i6-153624' : 'i2-360',
    pulls: row.rpm_with_cylinder_off.map((rpm, i) => cut(i + 1, [row.base_rpm, rpm])),
  })
  it('the drops are as published', () => {
    expect(balanceValues(job, 'as found').map(value => value.drop)).toEqual(row.drop_rpm)
  })
  it('the weakest cylinder, and only that one, is weak', () => {
    const outside = judgeBalance(job, 'as found').filter(one => one.verdict === 'outside')
    expect(outside.map(one => one.cylinder)).toEqual([row.weakest_cylinder])
  })
})

describe.each(cases)('%s, cut in order a minute apart', (_name, row) => {
  const pulls = row.rpm_with_cylinder_off.map((rpm, i) => ({
    ...cut(i + 1, [row.base_rpm, rpm]),
    at: new Date(Date.UTC(2026, 2, 2, 9, i)).toISOString(),
  }))
  const layout = row.drop_rpm.length === 6 ? 'i6-153624' : 'i2-360'
  it('a baseline that stood still takes nothing from the drops and changes no call', () => {
    const job = jobWith({ layout, pulls })
    expect(balanceValues(job, 'as found').map(value => value.drop)).toEqual(row.drop_rpm)
    const outside = judgeBalance(job, 'as found').filter(one => one.verdict === 'outside')
    expect(outside.map(one => one.cylinder)).toEqual([row.weakest_cylinder])
  })
  it('the share of the weakest is the least, by more than its interval', () => {
    const shares = balanceShares(jobWith({ layout, pulls }), 'as found').flatMap(one =>
      one.speed ? [{ cylinder: one.cylinder, ...one.speed }] : [],
    )
    const [least, next] = shares.toSorted((a, b) => a.percent - b.percent)
    expect(least?.cylinder).toBe(row.weakest_cylinder)
    expect((least?.percent ?? Number.NaN) + (least?.plusMinus ?? Number.NaN)).toBeLessThan(
      next?.percent ?? Number.NaN,
    )
  })
})

it('in the case of six, 17 rpm stands against a middle drop of 86', () => {
  expect(median(data.power_balance[0]?.drop_rpm ?? [])).toBe(86)
})

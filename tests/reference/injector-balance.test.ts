// Injector balance against two published worked tables; sources in data/worked-examples.json. The second one prints a
// drop that its own readings deny: ours is taken from the readings.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { judgeInjectorBalance } from '../../shared/gauges/injector-balance.ts'
import { jobWith } from '../../shared/gauges/testing/evidence-job.ts'
import { injectorDrop } from '../../shared/gauges/testing/make-pull.ts'
import { published } from './published.ts'

const numbers = z.array(z.number())
const data = published(
  'worked-examples',
  z.object({
    injector_balance: z.array(
      z.object({
        first_kPa: numbers,
        second_kPa: numbers,
        drop_kPa: numbers,
        mean_drop: z.number(),
        tolerance_kPa: z.union([z.literal(10), z.literal(20)]),
        fails: numbers.optional(),
      }),
    ),
  }),
)

const judged = ({ first_kPa, second_kPa, tolerance_kPa }: (typeof data.injector_balance)[number]) => {
  const kPa = (value = 0) => ({ value, unit: 'kPa' as const })
  const pulls = first_kPa.map((before, i) =>
    injectorDrop(i + 1, { before: kPa(before), after: kPa(second_kPa[i]) }),
  )
  const circumstances = { rules: { injectorBalance: `injector-${tolerance_kPa}` } }
  return judgeInjectorBalance(jobWith({ layout: 'i4-1342', pulls, circumstances }), 'as found', {
    pressure: 'kPa',
    vacuum: 'kPa',
  })
}

it('there are two tables', () => {
  expect(data.injector_balance.map(row => row.tolerance_kPa)).toEqual([20, 10])
})

describe.each(data.injector_balance.map(row => [row.tolerance_kPa, row] as const))(
  'within %d kPa',
  (_kPa, row) => {
    it('each stands as far from the average as the readings say', () => {
      judged(row).forEach((one, i) => {
        expect(Math.abs(one.value - ((row.drop_kPa[i] ?? 0) - row.mean_drop))).toBeLessThanOrEqual(0.5)
      })
    })
    it('the same injectors fail as the page says', () => {
      const outside = judged(row).filter(one => one.verdict === 'outside')
      // The second page calls 1 and 3 good, which its own average denies: near the limit, they cannot be called.
      expect(outside.map(one => one.cylinder)).toEqual(row.fails ?? [2, 4])
    })
  },
)

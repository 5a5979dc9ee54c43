// Laws of cylinder balance: the numbers on the cylinders and the order of storing mean nothing; the order in time does.
import * as fc from 'fast-check'
import { expect, it } from 'vitest'
import type { PullOf } from '../job/pull-schema.ts'
import { judgeBalance } from './balance.ts'
import { balanceGauge } from './balance-gauge.ts'
import { cut, jobWith, voided } from './testing/evidence-job.ts'

const cylinders = [1, 2, 3, 4, 5, 6]
const whole = (min: number, max: number) => fc.integer({ min, max })
const arbitraryCut: fc.Arbitrary<PullOf<'balance'>> = fc
  .record({
    cylinder: fc.constantFrom(...cylinders),
    before: whole(650, 900),
    drop: whole(-10, 150),
    restored: fc.option(whole(650, 900)),
    vacuum: fc.option(fc.tuple(whole(160, 200), whole(-5, 40))),
    minute: whole(0, 40),
  })
  .map(({ cylinder, before, drop, restored, vacuum, minute }) => {
    const pull = cut(
      cylinder,
      [before, before - drop],
      vacuum ? [vacuum[0] / 10, (vacuum[0] - vacuum[1]) / 10] : undefined,
    )
    return {
      ...pull,
      at: new Date(Date.UTC(2026, 2, 2, 9, minute)).toISOString(),
      entry: { ...pull.entry, ...(restored === null ? {} : { rpmRestored: restored }) },
    }
  })
const cuts = fc.array(arbitraryCut, { minLength: 1, maxLength: 24 })
const judged = (pulls: PullOf<'balance'>[]) => balanceGauge.judge(jobWith({ pulls }), 'as found')

it('permuting the cylinders permutes the verdicts', () => {
  const permuted = fc.shuffledSubarray(cylinders, { minLength: 6, maxLength: 6 })
  fc.assert(
    fc.property(cuts, permuted, (pulls, to) => {
      const other = (cylinder: number) => to[cylinder - 1] ?? Number.NaN
      const calls = (all: PullOf<'balance'>[], name: (cylinder: number) => number) =>
        judgeBalance(jobWith({ pulls: all }), 'as found')
          .map(
            ({ rule, cylinder, verdict, value, plusMinus }) =>
              `${name(cylinder)} ${rule} ${verdict} ${value} ${plusMinus}`,
          )
          .toSorted()
      const renamed = pulls.map(pull => ({ ...pull, cylinder: other(pull.cylinder) }))
      expect(calls(renamed, cylinder => cylinder)).toEqual(calls(pulls, other))
    }),
  )
})

it('storing the cuts in another order changes nothing', () => {
  const shuffled = cuts.chain(all =>
    fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length })),
  )
  fc.assert(
    fc.property(shuffled, ([a, b]) => {
      expect(judged(b)).toEqual(judged(a))
    }),
  )
})

it('voiding a cut is as if it had not been made, and taking that back as if it had not been voided', () => {
  fc.assert(
    fc.property(cuts, fc.nat(), (pulls, pick) => {
      const which = pick % pulls.length
      const without = pulls.map((pull, i) => (i === which ? voided(pull) : pull))
      expect(judged(without)).toEqual(judged(pulls.toSpliced(which, 1)))
      const back = without.map(({ voided: struck, ...pull }, i) => (struck ? pull : (pulls[i] ?? pull)))
      expect(judged(back)).toEqual(judged(pulls))
    }),
  )
})

it('later by the same time for all changes nothing', () => {
  fc.assert(
    fc.property(cuts, whole(1, 100_000), (pulls, minutes) => {
      const later = pulls.map(pull => ({
        ...pull,
        at: new Date(Date.parse(pull.at) + minutes * 60_000).toISOString(),
      }))
      expect(judged(later)).toEqual(judged(pulls))
    }),
  )
})

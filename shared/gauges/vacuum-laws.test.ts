// Laws of the vacuum verdicts: order, units and voiding change nothing they should not, and the air moves the band only.
import * as fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Circumstances } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import { toVacuum } from '../units/convert.ts'
import type { Vacuum } from '../units/quantity.ts'
import { inHg, jobWith, vacuum, voided } from './testing/evidence-job.ts'
import { judgeVacuum } from './vacuum.ts'
import { needleBehaviours, vacuumPhases, vacuumTrends } from './vacuum-entry.ts'

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map(n => n / 10)
const arbitraryPull: fc.Arbitrary<PullOf<'vacuum'>> = fc
  .record({
    phase: fc.constantFrom(...vacuumPhases),
    reading: tenths(0, 31),
    range: fc.option(fc.tuple(tenths(0, 31), tenths(0, 31))),
    rebound: fc.option(tenths(0, 31)),
    settled: fc.option(tenths(0, 31)),
    needle: fc.option(fc.constantFrom(...needleBehaviours)),
    trend: fc.option(fc.constantFrom(...vacuumTrends)),
  })
  .map(({ phase, reading, range, rebound, settled, needle, trend }) => {
    const pull = vacuum(phase, reading)
    return {
      ...pull,
      entry: {
        ...pull.entry,
        ...(range ? { range: { low: inHg(range[0]), high: inHg(range[1]) } } : {}),
        ...(rebound === null ? {} : { rebound: inHg(rebound) }),
        ...(settled === null ? {} : { settled: inHg(settled) }),
        ...(needle === null ? {} : { needle }),
        ...(trend === null ? {} : { trend }),
      },
    }
  })
const pulls = fc.array(arbitraryPull, { minLength: 1, maxLength: 12 })
const judged = (all: PullOf<'vacuum'>[], circumstances: Circumstances = {}) =>
  judgeVacuum(jobWith({ pulls: all, circumstances }), 'as found')

const inKPa = (quantity: Vacuum): Vacuum => ({ value: toVacuum(quantity, 'kPa'), unit: 'kPa' })
const typedInKPa = (pull: PullOf<'vacuum'>): PullOf<'vacuum'> => {
  const { reading, range, rebound, settled } = pull.entry
  return {
    ...pull,
    entry: {
      ...pull.entry,
      reading: inKPa(reading),
      ...(range ? { range: { low: inKPa(range.low), high: inKPa(range.high) } } : {}),
      ...(rebound ? { rebound: inKPa(rebound) } : {}),
      ...(settled ? { settled: inKPa(settled) } : {}),
    },
  }
}

it('the order of the pulls changes nothing', () => {
  const shuffled = pulls.chain(all =>
    fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length })),
  )
  fc.assert(
    fc.property(shuffled, ([a, b]) => {
      expect(judged(b)).toEqual(judged(a))
    }),
  )
})

it('the unit a number was typed in changes nothing', () => {
  fc.assert(
    fc.property(pulls, tenths(15, 20), (all, least) => {
      const [a, b] = [inHg(least), inKPa(inHg(least))]
      expect(judged(all.map(typedInKPa), { specification: { idleVacuumMinimum: b } })).toEqual(
        judged(all, { specification: { idleVacuumMinimum: a } }),
      )
    }),
  )
})

it('a voided pull is as if it had not been made', () => {
  fc.assert(
    fc.property(pulls, fc.nat(), (all, pick) => {
      const which = pick % all.length
      expect(judged(all.map((pull, i) => (i === which ? voided(pull) : pull)))).toEqual(
        judged(all.toSpliced(which, 1)),
      )
    }),
  )
})

it('an idle reading that falls as the air falls is called the same', () => {
  fc.assert(
    fc.property(tenths(12, 25), fc.integer({ min: 0, max: 10 }), (reading, fall) => {
      const call = (all: PullOf<'vacuum'>[], barometer: number) =>
        judged(all, { barometer: inHg(barometer) }).find(one => one.rule === 'idle')?.verdict
      expect(call([vacuum('idle', reading - fall)], 30 - fall)).toBe(call([vacuum('idle', reading)], 30))
    }),
  )
})

it('whatever was noted is worded without a hole in it', () => {
  fc.assert(
    fc.property(pulls, all => {
      for (const { value, plusMinus, limit, why, source } of judged(all)) {
        expect([value, plusMinus ?? 0].every(Number.isFinite)).toBe(true)
        for (const text of [limit, why, source]) {
          expect(text.length).toBeGreaterThan(3)
          expect(text).not.toMatch(/NaN|undefined|Infinity|\.\.|\s\s/)
        }
      }
    }),
  )
})

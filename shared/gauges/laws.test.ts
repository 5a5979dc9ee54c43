// Laws that every gauge keeps: neither the order of the pulls nor the unit they were typed in changes a verdict, and
// what is voided does not count.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../diagnosis/assessment.ts'
import type { Job } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import { arbitraryCircumstances, arbitraryPull } from '../job/testing/arbitrary-parts.ts'
import { toPressure, toVacuum } from '../units/convert.ts'
import { pressureUnits, type Pressure, type Vacuum, vacuumUnits } from '../units/quantity.ts'
import { judgeAll } from './gauges.ts'
import { jobWith } from './testing/evidence-job.ts'

const stages = ['as found', 'after repair'] as const
const judged = (job: Job) => stages.flatMap(stage => judgeAll(job, stage))

const arbitraryJob = fc
  .record({
    pulls: fc.array(arbitraryPull([1, 2, 3, 4, 5, 6]), { maxLength: 24 }),
    circumstances: arbitraryCircumstances,
  })
  .map(jobWith)

type Units = { pressure: Pressure['unit']; vacuum: Vacuum['unit'] }

const inUnits = (pull: Pull, { pressure, vacuum }: Units): Pull => {
  const p = (quantity: Pressure): Pressure => ({ value: toPressure(quantity, pressure), unit: pressure })
  const v = (quantity: Vacuum): Vacuum => ({ value: toVacuum(quantity, vacuum), unit: vacuum })
  if (pull.test === 'compression') {
    const { final, firstPuff } = pull.entry
    return {
      ...pull,
      entry: { ...pull.entry, final: p(final), ...(firstPuff ? { firstPuff: p(firstPuff) } : {}) },
    }
  }
  if (pull.test === 'balance') {
    const { vacuumBefore, vacuumAfter } = pull.entry
    return {
      ...pull,
      entry: {
        ...pull.entry,
        ...(vacuumBefore ? { vacuumBefore: v(vacuumBefore) } : {}),
        ...(vacuumAfter ? { vacuumAfter: v(vacuumAfter) } : {}),
      },
    }
  }
  if (pull.test !== 'vacuum') return pull
  const { reading, rebound } = pull.entry
  return {
    ...pull,
    entry: { ...pull.entry, reading: v(reading), ...(rebound ? { rebound: v(rebound) } : {}) },
  }
}

describe('verdicts', () => {
  it('do not depend on the order of the pulls', () => {
    const shuffled = arbitraryJob.chain(job =>
      fc.tuple(
        fc.constant(job),
        fc
          .shuffledSubarray(job.pulls, { minLength: job.pulls.length, maxLength: job.pulls.length })
          .map(pulls => ({ ...job, pulls })),
      ),
    )
    fc.assert(
      fc.property(shuffled, ([a, b]) => {
        expect(judged(b)).toEqual(judged(a))
      }),
    )
  })

  it('do not depend on the unit the reading was typed in', () => {
    const units = fc.array(
      fc.record({ pressure: fc.constantFrom(...pressureUnits), vacuum: fc.constantFrom(...vacuumUnits) }),
      { minLength: 24, maxLength: 24 },
    )
    fc.assert(
      fc.property(arbitraryJob, units, (job, choices) => {
        const pulls = job.pulls.map((pull, i) => {
          const unit = choices[i]
          return unit ? inUnits(pull, unit) : pull
        })
        expect(judged({ ...job, pulls })).toEqual(judged(job))
      }),
    )
  })

  it('do not depend on the unit they are shown in', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        const calls = (units: Units) =>
          stages
            .flatMap(stage => judgeAll(job, stage, units))
            .map(({ cylinder, rule, verdict }) => [cylinder, rule, verdict])
        const trade = calls({ pressure: 'psi', vacuum: 'inHg' })
        expect(calls({ pressure: 'kPa', vacuum: 'kPa' })).toEqual(trade)
        expect(calls({ pressure: 'bar', vacuum: 'kPa' })).toEqual(trade)
      }),
    )
  })

  it('take no notice of voided pulls', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        const valid = { ...job, pulls: job.pulls.filter(pull => pull.voided === undefined) }
        expect(assess(job)).toEqual(assess(valid))
      }),
    )
  })

  it('always have a finite value, a limit, a reason and a source', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        for (const one of judged(job)) {
          expect(Number.isFinite(one.value)).toBe(true)
          expect(Number.isFinite(one.plusMinus ?? 0)).toBe(true)
          for (const text of [one.limit, one.why, one.source]) {
            expect(text.length).toBeGreaterThan(3)
            expect(text).not.toMatch(/NaN|undefined|Infinity/)
          }
        }
      }),
    )
  })

  it('come once for each rule, cylinder and stage', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        const keys = judged(job).map(one => `${one.stage} ${one.test} ${one.rule} ${one.cylinder ?? ''}`)
        expect(new Set(keys).size).toBe(keys.length)
      }),
    )
  })
})

// The laws of every gauge, held by the tests of ignition, fuel and scan data, swaps and observations.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Job } from '../job/job-schema.ts'
import { pullSchema } from '../job/pull-schema.ts'
import { arbitraryPressure } from '../job/testing/arbitrary-parts.ts'
import { toPressure } from '../units/convert.ts'
import { pressureUnits, type Pressure } from '../units/quantity.ts'
import { judgeAll } from './gauges.ts'
import type { ShownUnits } from './shown.ts'
import { arbitraryTest } from './testing/arbitrary-tests.ts'
import { jobWith } from './testing/evidence-job.ts'

const stages = ['as found', 'after repair'] as const
const judged = (job: Job, units?: ShownUnits) => stages.flatMap(stage => judgeAll(job, stage, units))

const arbitraryJob = fc
  .record({
    pulls: fc.array(arbitraryTest, { maxLength: 30 }),
    specification: fc.record(
      {
        fuelPressureMinimum: arbitraryPressure,
        fuelPressureMaximum: arbitraryPressure,
        fuelPressureFall: arbitraryPressure,
        holdMinutes: fc.constantFrom(1, 20),
      },
      { requiredKeys: [] },
    ),
  })
  .map(({ pulls, specification }) => jobWith({ pulls, circumstances: { specification } }))

describe('verdicts', () => {
  it('are made on pulls that the schema accepts', () => {
    fc.assert(
      fc.property(arbitraryTest, pull => {
        expect(pullSchema.safeParse(pull).success).toBe(true)
      }),
    )
  })
  it('do not depend on the order of the pulls', () => {
    fc.assert(
      fc.property(
        arbitraryJob.chain(job =>
          fc.tuple(
            fc.constant(job),
            fc.shuffledSubarray(job.pulls, { minLength: job.pulls.length, maxLength: job.pulls.length }),
          ),
        ),
        ([job, pulls]) => {
          expect(judged({ ...job, pulls })).toEqual(judged(job))
        },
      ),
    )
  })
  it('do not depend on the unit a pressure was typed in', () => {
    const typed = fc.constantFrom(...pressureUnits)
    fc.assert(
      fc.property(arbitraryJob, typed, (job, unit) => {
        const p = (one: Pressure): Pressure => ({ value: toPressure(one, unit), unit })
        const pulls = job.pulls.map(pull =>
          pull.test === 'fuel pressure'
            ? { ...pull, entry: { ...pull.entry, pressure: p(pull.entry.pressure) } }
            : pull.test === 'injector balance'
              ? { ...pull, entry: { before: p(pull.entry.before), after: p(pull.entry.after) } }
              : pull,
        )
        const calls = (of: Job) => judged(of).map(({ cylinder, rule, verdict }) => [cylinder, rule, verdict])
        expect(calls({ ...job, pulls })).toEqual(calls(job))
      }),
    )
  })
  it('do not depend on the unit they are shown in', () => {
    fc.assert(
      fc.property(arbitraryJob, fc.constantFrom(...pressureUnits), (job, pressure) => {
        const calls = (units?: ShownUnits) =>
          judged(job, units).map(({ cylinder, rule, verdict }) => [cylinder, rule, verdict])
        expect(calls({ pressure, vacuum: 'kPa' })).toEqual(calls())
      }),
    )
  })
  it('take no notice of voided pulls', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        const valid = { ...job, pulls: job.pulls.filter(pull => pull.voided === undefined) }
        expect(judged(job)).toEqual(judged(valid))
      }),
    )
  })
  it('are finite, with limit, reason and source, and come once for each rule, cylinder and stage', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        const verdicts = judged(job)
        for (const one of verdicts) {
          expect(Number.isFinite(one.value)).toBe(true)
          expect(Number.isFinite(one.plusMinus ?? 0)).toBe(true)
          for (const text of [one.limit, one.why, one.source]) {
            expect(text.length).toBeGreaterThan(3)
            expect(text).not.toMatch(/NaN|undefined|Infinity|\bnull\b/)
          }
        }
        const keys = verdicts.map(one => `${one.stage} ${one.test} ${one.rule} ${one.cylinder ?? ''}`)
        expect(new Set(keys).size).toBe(keys.length)
      }),
    )
  })
})

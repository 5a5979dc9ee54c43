// Laws of the tests that press on one cylinder (cranking and running compression, leak-down), with testers, rule sets,
// set-up and corrections in play.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Circumstances, Job } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import { without } from '../job/without.ts'
import { toLength, toPressure } from '../units/convert.ts'
import { type Length, type Pressure, pressureUnits } from '../units/quantity.ts'
import { correctPull } from './correct-entry.ts'
import { gauges } from './gauges.ts'
import { escapePaths } from './leak-down-entry.ts'
import { ruleSets } from './rule-sets.ts'
import { type ShownUnits, tradeUnits } from './shown.ts'
import { oddOnes } from './spoilers-odd-one.ts'
import { jobWith } from './testing/evidence-job.ts'

const mine = new Set(['compression', 'running compression', 'leak-down'])
const judged = (job: Job, units: ShownUnits = tradeUnits) => {
  const verdicts = gauges
    .filter(gauge => mine.has(gauge.test))
    .flatMap(gauge => gauge.judge(job, 'as found', units))
  return [...verdicts, ...oddOnes(verdicts, 'as found')]
}

const tenths = (max: number) => fc.integer({ min: 0, max: max * 10 }).map(n => n / 10)
const pressure = (max: number) => tenths(max).map((value): Pressure => ({ value, unit: 'psi' }))
const orifice = fc.constantFrom<Length[]>({ value: 0.04, unit: 'in' }, { value: 1.5, unit: 'mm' })
const common = {
  id: fc.uuid(),
  stage: fc.constant('as found' as const),
  at: fc.integer({ min: 0, max: 59 }).map(n => `2026-03-02T09:${String(n).padStart(2, '0')}:00Z`),
  cylinder: fc.integer({ min: 1, max: 6 }),
  instrument: fc.constantFrom('fine', 'bar', 'bare'),
}
const requiredKeys = ['id', 'stage', 'at', 'cylinder', 'test', 'entry'] as const
const escapes = fc.uniqueArray(fc.constantFrom(...escapePaths), { maxLength: 3 })

const arbitraryPull: fc.Arbitrary<Pull> = fc.oneof(
  fc.record(
    {
      ...common,
      test: fc.constant('compression' as const),
      entry: fc.record(
        {
          final: pressure(260),
          firstPuff: pressure(200),
          wet: fc.boolean(),
          held: fc.boolean(),
          puffs: fc.integer({ min: 3, max: 8 }),
          oilMillilitres: fc.constantFrom(5, 15),
          batteryVolts: tenths(13),
          crankingRpm: fc.integer({ min: 80, max: 260 }),
        },
        { requiredKeys: ['final'] },
      ),
    },
    { requiredKeys: [...requiredKeys] },
  ),
  fc.record(
    {
      ...common,
      test: fc.constant('running compression' as const),
      entry: fc.record({ idle: pressure(90), snap: pressure(160) }, { requiredKeys: [] }),
    },
    { requiredKeys: [...requiredKeys] },
  ),
  fc.record(
    {
      ...common,
      test: fc.constant('leak-down' as const),
      entry: fc.oneof(
        fc.record(
          {
            form: fc.constant('percent' as const),
            percent: tenths(60),
            regulated: pressure(100),
            escapes,
            orifice,
          },
          { requiredKeys: ['form', 'percent'] },
        ),
        fc.record(
          { form: fc.constant('differential' as const), supply: pressure(100), held: pressure(100), escapes },
          { requiredKeys: ['form', 'supply', 'held'] },
        ),
      ),
    },
    { requiredKeys: [...requiredKeys] },
  ),
)

const circumstances: fc.Arbitrary<Circumstances> = fc.record(
  {
    altitude: fc.record({ value: fc.integer({ min: 0, max: 9000 }), unit: fc.constant('ft' as const) }),
    rules: fc.record(
      {
        compressionSpread: fc.constantFrom(...ruleSets.compressionSpread.map(one => one.id)),
        compressionShare: fc.constantFrom(...ruleSets.compressionShare.map(one => one.id)),
        leakDown: fc.constantFrom(...ruleSets.leakDown.map(one => one.id)),
      },
      { requiredKeys: [] },
    ),
    specification: fc.record(
      {
        compressionMinimum: pressure(180),
        compressionRatio: fc.integer({ min: 7, max: 13 }),
        leakDownMaximum: fc.integer({ min: 5, max: 40 }),
      },
      { requiredKeys: [] },
    ),
  },
  { requiredKeys: [] },
)

const arbitraryJob: fc.Arbitrary<Job> = fc
  .record({ pulls: fc.array(arbitraryPull, { maxLength: 30 }), circumstances })
  .map(parts => ({
    ...jobWith(parts),
    instruments: [
      {
        id: 'fine',
        kind: 'compression gauge',
        name: 'Fine',
        unit: 'psi',
        division: 2,
        accuracyPercent: 1.6,
        fullScale: 300,
        hoseMillilitres: 12,
      },
      { id: 'bar', kind: 'compression gauge', name: 'Metric', unit: 'bar', division: 0.2 },
      { id: 'bare', kind: 'leak-down tester', name: 'Unknown' },
    ],
  }))

const lengthIn = (quantity: Length): Length =>
  quantity.unit === 'mm'
    ? { value: toLength(quantity, 'in'), unit: 'in' }
    : { value: toLength(quantity, 'mm'), unit: 'mm' }

function inUnit(pull: Pull, unit: Pressure['unit']): Pull {
  const p = (quantity: Pressure): Pressure => ({ value: toPressure(quantity, unit), unit })
  if (pull.test === 'compression') {
    const { final, firstPuff } = pull.entry
    return {
      ...pull,
      entry: { ...pull.entry, final: p(final), ...(firstPuff && { firstPuff: p(firstPuff) }) },
    }
  }
  if (pull.test === 'running compression') {
    const { idle, snap } = pull.entry
    return {
      ...pull,
      entry: { ...pull.entry, ...(idle && { idle: p(idle) }), ...(snap && { snap: p(snap) }) },
    }
  }
  if (pull.test !== 'leak-down') return pull
  const { entry } = pull
  const sized = { ...entry, ...(entry.orifice && { orifice: lengthIn(entry.orifice) }) }
  return {
    ...pull,
    entry:
      sized.form === 'percent'
        ? { ...sized, ...(sized.regulated && { regulated: p(sized.regulated) }) }
        : { ...sized, supply: p(sized.supply), held: p(sized.held) },
  }
}

describe('verdicts on the pressures of a cylinder', () => {
  it('do not depend on the order of the pulls', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        expect(judged({ ...job, pulls: job.pulls.toReversed() })).toEqual(judged(job))
      }),
    )
  })
  it('do not depend on the unit of entry', () => {
    fc.assert(
      fc.property(
        arbitraryJob,
        fc.array(fc.constantFrom(...pressureUnits), { minLength: 30 }),
        (job, units) => {
          const pulls = job.pulls.map((pull, i) => inUnit(pull, units[i] ?? 'psi'))
          expect(judged({ ...job, pulls })).toEqual(judged(job))
        },
      ),
    )
  })
  it('are called alike in every shown unit', () => {
    const calls = (job: Job, units: ShownUnits) =>
      judged(job, units).map(({ test, rule, cylinder, verdict }) => [test, rule, cylinder, verdict])
    fc.assert(
      fc.property(arbitraryJob, job => {
        expect(calls(job, { pressure: 'bar', vacuum: 'kPa' })).toEqual(calls(job, tradeUnits))
      }),
    )
  })
  it('forget a voided pull, and know it again when it is taken back', () => {
    const withPull = arbitraryJob.filter(job => job.pulls.length > 0)
    fc.assert(
      fc.property(withPull, fc.nat(), (job, n) => {
        const at = n % job.pulls.length
        const voided: Pull[] = job.pulls.map((pull, i) =>
          i === at ? { ...pull, voided: { reason: 'slipped', at: pull.at } } : pull,
        )
        expect(judged({ ...job, pulls: voided })).toEqual(
          judged({ ...job, pulls: job.pulls.filter((_, i) => i !== at) }),
        )
        const back = voided.map(pull => without(pull, 'voided'))
        expect(judged({ ...job, pulls: back })).toEqual(judged(job))
      }),
    )
  })
  it('come back when a correction is taken back', () => {
    const because = { reason: 'scale misread', at: '2026-03-02T10:00:00Z' }
    fc.assert(
      fc.property(arbitraryJob, job => {
        const pulls = job.pulls.map(pull => {
          const wrong = correctPull(pull, { how: { kind: 'scale', factor: 3 }, ...because })
          const right = wrong.ok && correctPull(wrong.value, { how: { kind: 'as entered' }, ...because })
          return right && right.ok ? right.value : pull
        })
        expect(judged({ ...job, pulls })).toEqual(judged(job))
      }),
    )
  })
  it('come once for each rule and cylinder, whole and with their reasons', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        const verdicts = judged(job)
        const keys = verdicts.map(one => `${one.test} ${one.rule} ${one.cylinder ?? ''}`)
        expect(new Set(keys).size).toBe(keys.length)
        for (const one of verdicts) {
          expect(Number.isFinite(one.value)).toBe(true)
          expect(Number.isFinite(one.plusMinus ?? 0)).toBe(true)
          for (const text of [one.limit, one.why, one.source])
            expect(text).not.toMatch(/NaN|undefined|Infinity|^$/)
        }
      }),
    )
  })
})

// Random parts of a job: times, quantities, shots, readings, pulls. Consistent with the schemas.
import * as fc from 'fast-check'
import {
  conditions,
  depositKinds,
  depositPlaces,
  electrodeWearLevels,
  insulatorColours,
  insulatorDamageKinds,
  shotKinds,
  wetnessLevels,
} from '../../plug/condition.ts'
import type { Circumstances, EngineInWords, Repair } from '../job-schema.ts'
import type { Pull } from '../pull-schema.ts'
import type { Reading, ReadingDetails, Shot, TakenAt } from '../tray-schema.ts'

/** Leaves each field in `optional` out now and then, never as undefined. */
const required = <T, K extends keyof T>(fields: { [F in keyof T]: fc.Arbitrary<T[F]> }, requiredKeys: K[]) =>
  fc.record(fields, { requiredKeys })

export const arbitraryTime = fc
  .integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2030, 0, 1) })
  .map(ms => new Date(ms).toISOString())

/** Text as people write it, other scripts and symbols included. */
export const arbitraryText = fc.string({ unit: 'grapheme', maxLength: 12 })
export const arbitraryName = fc.stringMatching(/^[A-Z][a-z]{1,11}$/)
export const arbitraryId = fc.stringMatching(/^[A-Za-z0-9_-]{1,12}$/)
export const arbitrarySha256 = fc.stringMatching(/^[0-9a-f]{64}$/)

/** One decimal, as a gauge is read. */
const decimal = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map(n => n / 10)
export const arbitraryPressure = fc.oneof(
  fc.record({ value: decimal(0, 400), unit: fc.constant('psi' as const) }),
  fc.record({ value: decimal(0, 2500), unit: fc.constant('kPa' as const) }),
  fc.record({ value: decimal(0, 25), unit: fc.constant('bar' as const) }),
)
export const arbitraryVacuum = fc.record({
  value: decimal(0, 30),
  unit: fc.constantFrom('inHg' as const, 'kPa' as const),
})
const arbitraryLength = fc.record({
  value: decimal(0, 3),
  unit: fc.constantFrom('mm' as const, 'in' as const),
})

const two = (n: number) => String(n).padStart(2, '0')
/** Few distinct seconds, so that ties and near ties come up. */
export const arbitraryTakenAt: fc.Arbitrary<TakenAt> = required(
  {
    local: fc
      .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 59 }))
      .map(([day, hour, second]) => `2026-03-${two(day)}T${two(hour)}:00:${two(second)}`),
    subSec: fc.stringMatching(/^\d{1,3}$/),
    offset: fc.constantFrom('+00:00', '-05:00', '+05:30'),
  },
  ['local'],
)

export const arbitraryShot: fc.Arbitrary<Shot> = required(
  {
    id: arbitraryId,
    photo: arbitrarySha256,
    format: fc.constantFrom('jpeg' as const, 'png' as const, 'heic' as const),
    fileName: fc.integer({ min: 1, max: 200 }).map(n => `IMG_${n}.jpg`),
    bytes: fc.integer({ min: 1, max: 9_000_000 }),
    width: fc.integer({ min: 1, max: 9000 }),
    height: fc.integer({ min: 1, max: 9000 }),
    profile: fc.constantFrom('sRGB IEC61966-2.1', 'Display P3'),
    takenAt: arbitraryTakenAt,
    addedAt: arbitraryTime,
    kind: fc.constantFrom(...shotKinds),
  },
  ['id', 'photo', 'format', 'fileName', 'bytes', 'width', 'height', 'addedAt', 'kind'],
)

export const arbitraryDetails: fc.Arbitrary<ReadingDetails> = required(
  {
    insulatorColour: fc.constantFrom(...insulatorColours),
    deposits: fc.array(
      fc.record({ kind: fc.constantFrom(...depositKinds), place: fc.constantFrom(...depositPlaces) }),
      { minLength: 1, maxLength: 3 },
    ),
    wetness: fc.constantFrom(...wetnessLevels),
    electrodeWear: fc.constantFrom(...electrodeWearLevels),
    insulatorDamage: fc.constantFrom(...insulatorDamageKinds),
    gap: arbitraryLength,
    oilInWell: fc.boolean(),
  },
  [],
)

/** Always says something: a condition at least. */
export const arbitraryReading: fc.Arbitrary<Reading> = required(
  {
    by: required({ kind: fc.constant('person' as const), name: arbitraryName }, ['kind']),
    at: arbitraryTime,
    condition: fc.constantFrom(...conditions),
    details: arbitraryDetails,
    note: arbitraryText.filter(text => text !== ''),
  },
  ['by', 'at', 'condition', 'details'],
)

const voided = required({ reason: arbitraryName, at: arbitraryTime, by: arbitraryName }, ['reason', 'at'])
const common = {
  id: arbitraryId,
  stage: fc.constantFrom('as found' as const, 'after repair' as const),
  at: arbitraryTime,
  by: arbitraryName,
  note: arbitraryText,
  voided,
}
const always = ['id', 'stage', 'at', 'test', 'entry'] as const
const rpm = fc.integer({ min: 0, max: 3000 })

/** A pull of one of these cylinders, or of the whole engine. */
export const arbitraryPull = (cylinders: readonly number[]): fc.Arbitrary<Pull> => {
  const cylinder = fc.constantFrom(...cylinders)
  return fc.oneof(
    required(
      {
        ...common,
        test: fc.constant('compression' as const),
        cylinder,
        entry: required(
          {
            final: arbitraryPressure,
            firstPuff: arbitraryPressure,
            puffs: fc.integer({ min: 1, max: 12 }),
            wet: fc.boolean(),
          },
          ['final'],
        ),
      },
      [...always, 'cylinder'],
    ),
    required(
      {
        ...common,
        test: fc.constant('balance' as const),
        cylinder,
        entry: required(
          { rpmBefore: rpm, rpmAfter: rpm, vacuumBefore: arbitraryVacuum, vacuumAfter: arbitraryVacuum },
          ['rpmBefore', 'rpmAfter'],
        ),
      },
      [...always, 'cylinder'],
    ),
    required(
      {
        ...common,
        test: fc.constant('vacuum' as const),
        entry: required(
          {
            phase: fc.constantFrom(
              'idle' as const,
              '2500 rpm' as const,
              'snap' as const,
              'cranking' as const,
            ),
            reading: arbitraryVacuum,
            rebound: arbitraryVacuum,
            needle: fc.constantFrom('steady' as const, 'regular drop' as const, 'slow float' as const),
          },
          ['phase', 'reading'],
        ),
      },
      [...always],
    ),
    required(
      {
        ...common,
        test: fc.constant('leak-down' as const),
        cylinder,
        entry: fc.record({ form: fc.constant('percent' as const), percent: decimal(0, 100) }),
      },
      [...always, 'cylinder'],
    ),
    required(
      {
        ...common,
        test: fc.constant('spark' as const),
        cylinder,
        entry: fc.record({ spark: fc.constantFrom('strong' as const, 'none' as const) }),
      },
      [...always, 'cylinder'],
    ),
    required(
      {
        ...common,
        test: fc.constant('trims' as const),
        entry: required(
          {
            bank: fc.constantFrom(1, 2),
            state: fc.constantFrom('idle' as const, '2500 rpm' as const),
            shortTerm: decimal(-25, 25),
            longTerm: decimal(-25, 25),
          },
          ['bank', 'state'],
        ),
      },
      [...always],
    ),
    required(
      {
        ...common,
        test: fc.constant('misfire counts' as const),
        cylinder,
        entry: fc.record({ count: fc.integer({ min: 0, max: 500 }) }),
      },
      [...always, 'cylinder'],
    ),
  )
}

export const arbitraryEngine: fc.Arbitrary<EngineInWords> = required(
  {
    vehicle: arbitraryText,
    vin: fc.stringMatching(/^[A-HJ-NPR-Z0-9]{17}$/),
    odometer: fc.record({ value: decimal(0, 400_000), unit: fc.constantFrom('km' as const, 'mi' as const) }),
  },
  ['vehicle'],
)

export const arbitraryCircumstances: fc.Arbitrary<Circumstances> = required(
  {
    altitude: fc.record({ value: decimal(0, 4000), unit: fc.constantFrom('m' as const, 'ft' as const) }),
    barometer: arbitraryVacuum,
    specification: required(
      { compressionMinimum: arbitraryPressure, compressionSpread: arbitraryPressure },
      [],
    ),
    engineWarm: fc.boolean(),
  },
  [],
)

export const arbitraryRepair: fc.Arbitrary<Repair> = required(
  { done: arbitraryText, cause: arbitraryText, at: arbitraryTime, by: arbitraryName },
  ['done', 'at'],
)

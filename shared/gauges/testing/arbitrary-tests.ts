// Random pulls of ignition, fuel, scan, swap and observation tests, for laws. Consistent with the schemas.
import * as fc from 'fast-check'
import type { Pull } from '../../job/pull-schema.ts'
import { arbitraryPressure } from '../../job/testing/arbitrary-parts.ts'
import { clickKinds, fuelStates, trimStates } from '../fuel-entries.ts'
import { resistanceParts, sparkKinds, trackPlaces } from '../ignition-entries.ts'
import { observationKinds } from '../observation-entry.ts'
import { codeStates, misfireOccasions } from '../scan-entries.ts'
import { swapParts, swapResults } from '../swap-entry.ts'
import { asFrames, asPayload } from './mode-06-answer.ts'

/** Leaves each field not named required out now and then, never as undefined. */
const some = <T, K extends keyof T>(fields: { [F in keyof T]: fc.Arbitrary<T[F]> }, requiredKeys: K[]) =>
  fc.record(fields, { requiredKeys })

const common = {
  id: fc.uuid(),
  stage: fc.constantFrom('as found' as const, 'after repair' as const),
  at: fc.integer({ min: 10, max: 12 }).map(minute => `2026-03-02T10:${minute}:00Z`),
  voided: fc.constant({ reason: 'misread', at: '2026-03-02T11:00:00Z' }),
}
const always = ['id', 'stage', 'at', 'test', 'entry'] as const
const cylinder = fc.integer({ min: 1, max: 7 })
const length = fc.record({
  value: fc.integer({ min: 0, max: 90 }),
  unit: fc.constantFrom('mm' as const, 'in' as const),
})
const fewOhms = fc.integer({ min: 0, max: 60_000 })
const ohms = fc.oneof(fewOhms, fc.constantFrom(0, 1e7, 1e12))

const ofCylinder = <T extends string, E>(test: T, entry: fc.Arbitrary<E>) =>
  some({ ...common, test: fc.constant(test), cylinder, entry }, [...always, 'cylinder'])
const ofEngine = <T extends string, E>(test: T, entry: fc.Arbitrary<E>) =>
  some({ ...common, test: fc.constant(test), entry }, [...always])

const word = fc.oneof(fc.constantFrom(0, 0xffff), fc.integer({ min: 0, max: 0xffff }))
const answer = fc.constantFrom(0x01, 0xa1, 0xa2, 0xa3, 0xa4, 0xad).chain(mid =>
  fc.array(
    fc.record({
      mid: fc.constant(mid),
      tid: fc.constantFrom(0x0b, 0x0c, 0x80),
      uas: fc.constantFrom(0x24, 0x30, 0x81, 0x77),
      raw: fc.tuple(word, word, word),
    }),
    { minLength: 1, maxLength: 3 },
  ),
)
const pasted = fc
  .array(
    fc.oneof(
      answer.map(asPayload),
      answer.map(tests => asFrames(tests, '7E8').join('\n')),
      fc.constantFrom('hello', '21 00', '7F 06 31'),
    ),
    { minLength: 1, maxLength: 4 },
  )
  .map(lines => lines.join('\n'))

export const arbitraryTest: fc.Arbitrary<Pull> = fc.oneof(
  ofCylinder(
    'spark' as const,
    some(
      {
        spark: fc.constantFrom(...sparkKinds),
        gap: length,
        kilovolts: fc.integer({ min: 0, max: 60 }),
        tracks: fc.constantFrom(...trackPlaces),
      },
      ['spark'],
    ),
  ),
  ofCylinder(
    'resistance' as const,
    some(
      {
        part: fc.constantFrom(...resistanceParts),
        ohms,
        open: fc.boolean(),
        length,
        specified: fc.record({ minimum: ohms, maximum: ohms }),
      },
      ['part'],
    ),
  ),
  ofEngine(
    'fuel pressure' as const,
    some(
      {
        state: fc.constantFrom(...fuelStates),
        pressure: arbitraryPressure,
        minutes: fc.constantFrom(0, 0.5, 1, 20),
      },
      ['state', 'pressure'],
    ),
  ),
  ofCylinder('injector balance' as const, fc.record({ before: arbitraryPressure, after: arbitraryPressure })),
  ofCylinder(
    'injector' as const,
    some({ click: fc.constantFrom(...clickKinds), pulse: fc.boolean(), ohms: fewOhms }, []),
  ),
  ofEngine(
    'trims' as const,
    some(
      {
        bank: fc.integer({ min: 1, max: 3 }),
        state: fc.constantFrom(...trimStates),
        shortTerm: fc.integer({ min: -25, max: 25 }),
        longTerm: fc.integer({ min: -25, max: 25 }),
        closedLoop: fc.boolean(),
      },
      ['bank', 'state'],
    ),
  ),
  ofCylinder(
    'misfire counts' as const,
    some({ count: fc.integer({ min: 0, max: 300 }), during: fc.constantFrom(...misfireOccasions) }, [
      'count',
    ]),
  ),
  ofEngine(
    'trouble codes' as const,
    fc.record({
      codes: fc.array(
        some(
          {
            code: fc.constantFrom('P0300', 'P0303', 'P0307', 'P0171'),
            state: fc.constantFrom(...codeStates),
          },
          ['code'],
        ),
        { maxLength: 4 },
      ),
    }),
  ),
  ofEngine('mode 06' as const, fc.record({ hex: pasted })),
  ofEngine(
    'swap' as const,
    some(
      {
        part: fc.constantFrom(...swapParts),
        also: fc.array(fc.constantFrom(...swapParts), { maxLength: 2 }),
        from: cylinder,
        to: cylinder,
        result: fc.constantFrom(...swapResults),
        intermittent: fc.boolean(),
      },
      ['part', 'from', 'result'],
    ),
  ),
  ofEngine(
    'observation' as const,
    fc.record({
      seen: fc.constantFrom(...observationKinds),
      answer: fc.constantFrom('yes' as const, 'no' as const),
    }),
  ),
)

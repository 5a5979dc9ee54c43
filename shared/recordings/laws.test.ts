// What must not change the result of a recording: gain, offset, the clock's start, and which cylinder is the weak one.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Layout } from '../engine/layout-schema.ts'
import { layoutById } from '../engine/layouts.ts'
import { envelopeOf } from './envelope.ts'
import { starterRecording } from './testing/starter-recording.ts'
import { compressionOf, thinned } from './testing/whole-recording.ts'

const four: Layout = (() => {
  const layout = layoutById('i4-1342')
  if (!layout) throw new Error('no layout')
  return layout
})()
const made = starterRecording({
  layout: four,
  percent: { 3: 75 },
  noise: 0.05,
  rate: 1000,
  seconds: 5,
  sync: 'cycle',
})
const usual = compressionOf(made.recording, four)

describe('relative compression', () => {
  test('does not depend on gain, offset, and when the clock began', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.integer({ min: 0, max: 100_000 }),
        (gain, offset, milliseconds) => {
          const { time, amperes, sync } = made.recording
          const result = compressionOf(
            {
              time: time.map(now => now + milliseconds / 1000),
              amperes: amperes.map(level => gain * level + offset),
              ...(sync ? { sync } : {}),
            },
            four,
          )
          expect(result.values.map(value => value.cylinder)).toEqual(
            usual.values.map(value => value.cylinder),
          )
          for (const [at, value] of result.values.entries()) {
            expect(value.percent).toBeCloseTo(usual.values[at]?.percent ?? 0, 0)
          }
          expect(result.events).toHaveLength(usual.events.length)
        },
      ),
      { numRuns: 12 },
    )
  })

  test('finds the weak one wherever it is, alike', () => {
    for (const weak of four.firingOrder) {
      const other = starterRecording({
        layout: four,
        percent: { [weak]: 75 },
        noise: 0.05,
        rate: 1000,
        seconds: 5,
        sync: 'cycle',
        seed: weak,
      })
      const lowest = compressionOf(other.recording, four).values.toSorted((a, b) => a.percent - b.percent)[0]
      expect(lowest?.cylinder).toBe(weak)
      expect(Math.abs((lowest?.percent ?? 0) - 75)).toBeLessThan(2)
    }
  })
})

describe('the envelope', () => {
  test('holds every sample of its recording', () => {
    const level = fc.double({ min: -1000, max: 1000, noNaN: true })
    fc.assert(
      fc.property(fc.array(level, { minLength: 2, maxLength: 300 }), levels => {
        const time = Float64Array.from(levels, (_, at) => at / 997)
        const { low, high, from, to } = envelopeOf(thinned(time, Float64Array.from(levels)))
        const lowest = Math.min(...low.map(one => one ?? Number.POSITIVE_INFINITY))
        const highest = Math.max(...high.map(one => one ?? Number.NEGATIVE_INFINITY))
        expect(lowest).toBeCloseTo(Math.min(...levels), 1)
        expect(highest).toBeCloseTo(Math.max(...levels), 1)
        expect(from).toBe(0)
        expect(to).toBeCloseTo((levels.length - 1) / 997, 2)
      }),
    )
  })
})

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { drawn, levelsBetween, ticksBetween } from './picture-scale.ts'

const frame = { width: 100, top: 10, bottom: 90 }

describe('the path of an envelope', () => {
  const envelope = { from: 0, to: 4, unit: 'A', low: [0, 1, 2, 3], high: [1, 2, 3, 4] }

  test('goes along the highest levels and back along the lowest', () => {
    const { path, low, high } = drawn(envelope, 0, 4, frame)
    expect([low, high]).toEqual([0, 4])
    expect(path).toBe('M12.5 70.0L37.5 50.0L62.5 30.0L87.5 10.0L87.5 30.0L62.5 50.0L37.5 70.0L12.5 90.0Z')
  })

  test('breaks where there are no samples', () => {
    const { path } = drawn({ ...envelope, low: [0, null, 2, 3], high: [1, null, 3, 4] }, 0, 4, frame)
    expect(path.match(/M/g)).toHaveLength(2)
  })

  test('can be framed by what was found, and says when more runs out of the frame', () => {
    const levels = levelsBetween(envelope, 1, 3)
    expect(levels?.low).toBeCloseTo(0.7)
    expect(levels?.high).toBeCloseTo(3.3)
    expect(drawn(envelope, 0, 4, frame, levels)).toMatchObject({ ...levels, isCut: true })
    expect(drawn(envelope, 0, 4, frame).isCut).toBe(false)
    expect(levelsBetween(envelope, 5, 6)).toBeUndefined()
  })

  test('of nothing is empty', () => {
    expect(drawn({ ...envelope, low: [null], high: [null] }, 0, 4, frame).path).toBe('')
  })
})

describe('the marks of an axis', () => {
  test.each([
    [0, 1, 4, [0, 0.5, 1]],
    [0, 8, 8, [0, 1, 2, 3, 4, 5, 6, 7, 8]],
    [95, 640, 4, [200, 400, 600]],
  ])('from %d to %d', (from, to, most, ticks) => expect(ticksBetween(from, to, most)).toEqual(ticks))

  test('are few, even, and lie inside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 0.01, max: 1e6, noNaN: true }),
        (from, span) => {
          const ticks = ticksBetween(from, from + span, 8)
          expect(ticks.length).toBeLessThanOrEqual(9)
          for (const tick of ticks) {
            expect(tick).toBeGreaterThanOrEqual(from - 1e-6 * Math.abs(from) - 1e-9)
            expect(tick).toBeLessThanOrEqual(from + span + 1e-6 * Math.abs(from + span) + 1e-9)
          }
        },
      ),
    )
  })
})

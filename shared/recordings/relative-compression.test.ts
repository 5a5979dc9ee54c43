import { describe, expect, test } from 'vitest'
import type { Layout } from '../engine/layout-schema.ts'
import { layoutById } from '../engine/layouts.ts'
import { seeded } from './testing/random.ts'
import { type MadeRecording, starterRecording } from './testing/starter-recording.ts'
import { compressionOf } from './testing/whole-recording.ts'
import type { RecordingResult } from './recording.ts'

const layoutOf = (id: string): Layout => {
  const layout = layoutById(id)
  if (!layout) throw new Error(`no layout ${id}`)
  return layout
}
const four = layoutOf('i4-1342')
const six = layoutOf('i6-153624')

const codes = (result: RecordingResult) => result.remarks.map(remark => remark.code)

/** Greatest error in percent points of the values named by cylinder. */
const worstError = (result: RecordingResult, truth: MadeRecording['truth']) =>
  Math.max(
    ...result.values.map(value => Math.abs(value.percent - (truth.get(value.cylinder ?? 0) ?? Number.NaN))),
  )

describe('a recording with a sync signal', () => {
  test.each([
    ['single', 2],
    ['i2-360', 2],
    ['i3', 2],
    ['i4-1342', 2],
    ['i5', 2],
    ['i6', 2],
    ['i8', 4],
    ['v6-90-oddfire', 4],
    ['v12-sequential', 10],
  ])('names the cylinders of %s', (id, most) => {
    const layout = layoutOf(id)
    const weak = layout.firingOrder.at(-1) ?? 1
    const percent = layout.firingOrder.length > 1 ? { [weak]: 80 } : {}
    const made = starterRecording({ layout, percent, noise: 0.05, rate: 5000, sync: 'cycle', seed: 3 })
    const result = compressionOf(made.recording, layout)
    expect(result.synced).toBe(true)
    expect(new Set(result.values.map(value => value.cylinder))).toEqual(new Set(layout.firingOrder))
    expect(worstError(result, made.truth)).toBeLessThan(most)
    expect(result.rpm).toBeGreaterThan(195)
    expect(result.rpm).toBeLessThan(205)
  })

  test('marks every compression within a few crank degrees', () => {
    const made = starterRecording({ layout: four, percent: { 3: 70 }, noise: 0.05, sync: 'cycle' })
    const result = compressionOf(made.recording, four)
    const degrees = 6 * 200
    for (const event of result.events.filter(one => !one.leftOut)) {
      const own = made.compressions.filter(one => one.cylinder === event.cylinder)
      const apart = Math.min(...own.map(one => Math.abs(one.time - event.time)))
      expect(apart * degrees).toBeLessThan(8)
    }
    expect(result.events.filter(one => !one.leftOut).length).toBeGreaterThan(35)
  })

  test('does not name cylinders by a pulse that comes every turn', () => {
    const made = starterRecording({ layout: four, percent: { 3: 70 }, noise: 0.05, sync: 'turn' })
    const result = compressionOf(made.recording, four)
    expect(result.synced).toBe(false)
    expect(codes(result)).toContain('sync every turn')
    expect(result.values.every(value => value.cylinder === null)).toBe(true)
  })
})

describe('a recording without a sync signal', () => {
  const made = starterRecording({ layout: six, percent: { 5: 70 }, noise: 0.05, seed: 8 })
  const result = compressionOf(made.recording, six)

  test('gives values by position from the first hump marked', () => {
    expect(result.synced).toBe(false)
    expect(result.values.map(value => value.position)).toEqual([1, 2, 3, 4, 5, 6])
    expect(result.events[0]?.position).toBe(1)
    const low = result.values.filter(value => value.percent < 75)
    const first = result.events[0]?.time ?? 0
    const cylinders = made.compressions.filter(one => one.time > first - 0.03).map(one => one.cylinder)
    expect(low.map(value => cylinders[value.position - 1])).toEqual([5])
  })

  test('says the low one by position and asks for a sync signal', () => {
    expect(result.remarks.find(remark => remark.code === 'lowest')?.text).toMatch(
      /^One cylinder is lowest, at (69|70|71) %/,
    )
    expect(result.remarks.find(remark => remark.code === 'lowest')?.text).toMatch(
      /sync signal from cylinder 1/,
    )
  })
})

describe('a recording that something spoils', () => {
  const plain = { layout: four, percent: { 2: 80 }, noise: 0.05, rate: 5000, sync: 'cycle' as const }
  test.each([
    ['in-rush at the start', { inRush: true }, 1.5],
    ['no rest before or after', { rest: 0, inRush: false }, 1.5],
    ['a speed that falls by a quarter', { drift: -0.25 }, 1.5],
    ['a sagging battery', { sag: 0.2 }, 1.5],
    ['a clamp that was not zeroed', { offset: -300 }, 1.5],
    ['mains hum', { hum: 0.2 }, 1.5],
    ['missing samples', { missing: 0.03 }, 2],
    ['four times the noise', { noise: 0.2 }, 4],
    ['a clipping amplifier', { clipAt: 180 }, 4],
    ['two and a half seconds only', { seconds: 2.5 }, 3],
    ['a cold, slow engine', { rpm: 110 }, 1.5],
  ])('is still read with %s', (_, change, most) => {
    const made = starterRecording({ ...plain, ...change })
    const result = compressionOf(made.recording, four)
    expect(result.values).toHaveLength(4)
    expect(worstError(result, made.truth)).toBeLessThan(most)
    const [lowest] = result.values.toSorted((a, b) => a.percent - b.percent)
    expect(lowest?.cylinder).toBe(2)
  })

  test.each([
    ['clipped', { clipAt: 180 }],
    ['mains hum', { hum: 0.2 }],
    ['missing samples', { missing: 0.03 }],
    ['few cycles', { seconds: 2.5 }],
    ['speed changed', { drift: -0.4 }],
  ])('is remarked: %s', (code, change) => {
    expect(codes(compressionOf(starterRecording({ ...plain, ...change }).recording, four))).toContain(code)
  })

  test('is read with the clamp the wrong way round, and that is said', () => {
    const made = starterRecording(plain)
    const turned = { ...made.recording, amperes: made.recording.amperes.map(level => -level) }
    const result = compressionOf(turned, four)
    expect(codes(result)).toContain('clamp reversed')
    expect(worstError(result, made.truth)).toBeLessThan(1.5)
  })

  test('says that a clean one has nothing to remark but the low cylinder', () => {
    expect(codes(compressionOf(starterRecording(plain).recording, four))).toEqual(['lowest'])
    const even = starterRecording({ ...plain, percent: {} })
    expect(codes(compressionOf(even.recording, four))).toEqual([])
  })
})

describe('a layout that does not fit', () => {
  test('shows by the sync signal', () => {
    const made = starterRecording({ layout: six, percent: { 5: 70 }, noise: 0.05, sync: 'cycle' })
    const result = compressionOf(made.recording, four)
    expect(result.remarks.find(remark => remark.code === 'count differs')?.text).toMatch(
      /^6 compressions .* 4 cylinders/,
    )
    expect(result.synced).toBe(false)
  })

  test('shows by the pattern of a low hump', () => {
    const made = starterRecording({ layout: six, percent: { 5: 70 }, noise: 0.05 })
    const result = compressionOf(made.recording, four)
    expect(result.remarks.find(remark => remark.code === 'count differs')?.text).toMatch(/every 6 humps/)
  })
})

describe('a recording without cranking', () => {
  const random = seeded(5)
  const time = Float64Array.from({ length: 8000 }, (_, index) => index / 1000)
  test.each([
    ['nothing but zeros', () => 0],
    ['noise', () => random.normal()],
    ['a steady current with noise', () => 150 + random.normal()],
    ['no number at all', () => Number.NaN],
  ])('gives no values for %s and says what to do', (_, level) => {
    const result = compressionOf({ time, amperes: time.map(level) }, four)
    expect(result.values).toEqual([])
    expect(result.remarks).toHaveLength(1)
    expect(result.remarks[0]?.text).toMatch(/record|Record/)
  })

  test('gives no values for an empty recording', () => {
    const result = compressionOf({ time: new Float64Array(0), amperes: new Float64Array(0) }, four)
    expect(result.values).toEqual([])
  })
})

import { describe, expect, test } from 'vitest'
import type { Layout } from '../engine/layout-schema.ts'
import { layoutById } from '../engine/layouts.ts'
import { crankContribution } from './crank-contribution.ts'
import type { RecordingResult } from './recording.ts'
import { type CrankPlan, crankRecording, type MadeCrank } from './testing/crank-recording.ts'
import { thinned } from './testing/whole-recording.ts'

const layoutOf = (id: string): Layout => {
  const layout = layoutById(id)
  if (!layout) throw new Error(`no layout ${id}`)
  return layout
}
const four = layoutOf('i4-1342')

const byTeeth = (made: MadeCrank, { layout, teeth = 60, missing = 2 }: CrankPlan, synced = true) =>
  crankContribution(
    {
      kind: 'teeth',
      edges: { time: made.edges, teeth, missing },
      ...(synced ? { sync: thinned(made.time, made.sync) } : {}),
    },
    layout,
  )
const bySpeed = (made: MadeCrank, { layout }: CrankPlan) =>
  crankContribution(
    { kind: 'rpm', speed: thinned(made.time, made.rpm), sync: thinned(made.time, made.sync) },
    layout,
  )

const worstError = (result: RecordingResult, { truth }: MadeCrank) =>
  Math.max(
    ...result.values.map(value => Math.abs(value.percent - (truth.get(value.cylinder ?? 0) ?? Number.NaN))),
  )
const codes = (result: RecordingResult) => result.remarks.map(remark => remark.code)
const lowest = (result: RecordingResult) => result.values.toSorted((a, b) => a.percent - b.percent)[0]

describe('contributions to crank speed', () => {
  test.each([
    ['i3', 4],
    ['i4-1342', 4],
    ['i5', 5],
    ['i6', 6],
    ['v8-cross-sequential', 12],
  ])('of %s, by teeth and by speed', (id, most) => {
    const layout = layoutOf(id)
    const weak = layout.firingOrder[1] ?? 1
    const plan = { layout, percent: { [weak]: 70 }, jitter: 0.002, cycleSpread: 0.05, drift: -0.05 }
    const made = crankRecording(plan)
    for (const result of [byTeeth(made, plan), bySpeed(made, plan)]) {
      expect(result.synced).toBe(true)
      expect(worstError(result, made)).toBeLessThan(most)
      expect(lowest(result)?.cylinder).toBe(weak)
      expect(result.rpm).toBeGreaterThan(760)
      expect(result.rpm).toBeLessThan(840)
    }
  })

  test.each([
    [36, 1],
    [36, 2],
    [60, 2],
    [24, 0],
  ])('are read from a %i-%i wheel', (teeth, missing) => {
    const plan = { layout: four, percent: { 4: 70 }, jitter: 0.002, teeth, missing }
    const made = crankRecording(plan)
    const result = byTeeth(made, plan)
    expect(worstError(result, made)).toBeLessThan(5)
    expect(lowest(result)?.cylinder).toBe(4)
  })

  test('are known by position only without a sync signal', () => {
    const plan = { layout: four, percent: { 4: 70 } }
    const result = byTeeth(crankRecording(plan), plan, false)
    expect(result.synced).toBe(false)
    expect(result.values.map(value => value.cylinder)).toEqual([null, null, null, null])
    expect(result.remarks.find(remark => remark.code === 'lowest')?.text).toMatch(
      /^One cylinder adds least, position \d/,
    )
  })

  test('outlast lost edges: the turns are left out and the two turns of a cycle stay apart', () => {
    const plan = { layout: four, percent: { 4: 70 }, lost: 0.001 }
    const made = crankRecording(plan)
    const result = byTeeth(made, plan)
    expect(codes(result)).toContain('turns left out')
    expect(worstError(result, made)).toBeLessThan(5)
  })
})

describe('uneven teeth', () => {
  const plan = { layout: four, percent: { 4: 70 }, toothError: 0.004, cycleSpread: 0.05 }

  test('are said at one speed, and the intervals hold what they do', () => {
    const made = crankRecording(plan)
    const result = byTeeth(made, plan)
    expect(codes(result)).toContain('uneven teeth')
    for (const value of result.values) {
      const away = Math.abs(value.percent - (made.truth.get(value.cylinder ?? 0) ?? Number.NaN))
      expect(away).toBeLessThan(value.plusMinus ?? 0)
    }
  })

  test('are taken out where the speed changes enough', () => {
    const made = crankRecording({ ...plan, drift: 0.6, seconds: 30 })
    const result = byTeeth(made, plan)
    expect(codes(result)).toContain('teeth corrected')
    expect(worstError(result, made)).toBeLessThan(8)
    expect(result.values[0]?.plusMinus).toBeLessThan(
      byTeeth(crankRecording(plan), plan).values[0]?.plusMinus ?? 0,
    )
  })
})

describe('a recording that does not fit', () => {
  test('to the wheel that was chosen', () => {
    const made = crankRecording({ layout: four, teeth: 36, missing: 2 })
    const result = byTeeth(made, { layout: four })
    expect(result.values).toEqual([])
    expect(result.remarks[0]?.text).toMatch(/^34 teeth come between two gaps; a 60-2 wheel has 58/)
  })

  test('because the wheel has no gap', () => {
    const made = crankRecording({ layout: four, missing: 0 })
    expect(codes(byTeeth(made, { layout: four }))).toEqual(['no gap'])
  })

  test('because it is too short', () => {
    const plan = { layout: four, seconds: 0.5 }
    expect(codes(byTeeth(crankRecording(plan), plan))).toEqual(['too short'])
  })

  test('because the samples are too few for the speed', () => {
    const time = Float64Array.from({ length: 600 }, (_, at) => at / 30)
    const speed = thinned(
      time,
      time.map(() => 800),
    )
    expect(codes(crankContribution({ kind: 'rpm', speed }, four))).toEqual(['too coarse'])
  })

  test('because it is no speed', () => {
    const time = Float64Array.from({ length: 6000 }, (_, at) => at / 1000)
    const speed = thinned(
      time,
      time.map(() => 3),
    )
    expect(codes(crankContribution({ kind: 'rpm', speed }, four))).toEqual(['speed unlikely'])
  })
})

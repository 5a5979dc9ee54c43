// The minutes hold together: what a test needs exists, nothing is free, and the plugs are dearer to take out than to test with.
import { expect, it } from 'vitest'
import { setUpTimes, testTimes } from './test-times.ts'

it.each(Object.entries(testTimes))(
  '%s needs set-ups that exist and takes time',
  (_test, { minutes, bother, needs }) => {
    expect(minutes).toBeGreaterThan(0)
    expect(bother).toBeGreaterThanOrEqual(0)
    expect(needs.filter(name => !(name in setUpTimes))).toEqual([])
  },
)

it('set-ups cost time, and fit the planner’s mask', () => {
  const all = Object.values(setUpTimes)
  expect(all.length).toBeLessThanOrEqual(30)
  expect(all.every(({ minutes }) => minutes > 0)).toBe(true)
})

it('on a V8, once the plugs are out, compression of a further cylinder costs a tenth of the first', () => {
  const { minutes, eachPlug } = setUpTimes['plugs out']
  const first = minutes + 8 * eachPlug + testTimes.compression.minutes
  expect(testTimes.compression.minutes).toBeLessThan(first / 10)
})

// What the product shows of the plan: cylinders together, plain words, set-ups counted once, and when it stops.
import { describe, expect, it } from 'vitest'
import { nextTests } from './next-tests.ts'
import { type Explanation, type OfferedTest, type PlanningView, problemOf } from './planning-view.ts'
import { fixed } from './planning-problem.ts'
import type { ShopTimes } from './shop-time.ts'

const times: ShopTimes = {
  setUps: { 'plugs out': { minutes: 0, eachPlug: 5 }, 'head off': { minutes: 200 } },
  tests: {
    compression: { minutes: 3, bother: 0, needs: ['plugs out'] },
    'compression wet': { minutes: 3, bother: 0, needs: ['plugs out'] },
    'leak-down': { minutes: 12, bother: 3, needs: ['plugs out'] },
  },
  repairs: {
    rings: { action: 'Renew the rings', proof: 'compression again', minutes: 500, needs: ['head off'] },
    valve: { action: 'Grind the valve', proof: 'leak-down again', minutes: 250, needs: ['head off'] },
    coil: { action: 'Renew the coil', proof: 'misfire counts at zero on a drive', minutes: 40, needs: [] },
  },
  wrongRepairMinutes: 60,
  comebackMinutes: 2_000,
}
const one = (cause: string, cylinder: number, chance: number): Explanation => ({
  faults: [{ cause, cylinder }],
  chance,
})
const leakDown = (cylinder: number, explanations: readonly Explanation[]): OfferedTest => ({
  test: 'leak-down',
  cylinder,
  chances: explanations.map(({ faults }) => {
    const here = faults.find(fault => fault.cylinder === cylinder)?.cause
    if (here === 'rings') return [0.05, 0.9, 0.05]
    return here === 'valve' ? [0.05, 0.05, 0.9] : [0.94, 0.03, 0.03]
  }),
})
const named = (cause: string) => cause
const viewOf = (
  explanations: readonly Explanation[],
  cylinders: readonly number[],
  open: string[] = [],
): PlanningView => ({
  explanations,
  tests: cylinders.map(cylinder => leakDown(cylinder, explanations)),
  open,
  plugs: 8,
})

describe('the next tests', () => {
  it('say which two causes the best one separates, on which cylinder', () => {
    const view = viewOf([one('rings', 3, 0.5), one('valve', 3, 0.5)], [3, 5])
    const { nextTests: shown, advice } = nextTests(view, times, named)
    expect(shown[0]).toMatchObject({ test: 'leak-down', cylinders: [3], minutes: 52 })
    expect(shown[0]?.why).toBe('separates rings from valve on 3')
    expect(advice).toEqual({
      kind: 'test',
      text: 'Next: leak-down on 3, about 52 minutes: separates rings from valve on 3.',
    })
  })
  it('put cylinders of one test together and count what is opened once, or not at all where it is open', () => {
    const explanations = [one('rings', 3, 0.5), one('valve', 5, 0.5)]
    const closed = nextTests(viewOf(explanations, [3, 5]), times, named).nextTests[0]
    expect(closed?.minutes).toBe(40 + 12 * (closed?.cylinders.length ?? 0))
    const open = nextTests(viewOf(explanations, [3, 5], ['plugs out']), times, named).nextTests[0]
    expect(open?.cylinders).toEqual([3, 5])
    expect(open?.minutes).toBe(24)
    expect(open?.minutesSaved).toBeGreaterThan(closed?.minutesSaved ?? 0)
  })
  it('stop where a test would cost more than it saves, naming the repair and its proof', () => {
    const view = viewOf([one('coil', 3, 0.97), one('rings', 3, 0.03)], [3])
    const { nextTests: shown, advice } = nextTests(view, times, named)
    expect(advice.kind).toBe('repair')
    expect(advice.text).toBe(
      'Another test would cost more than it saves. Renew the coil on 3; what would prove it: misfire counts at zero on a drive.',
    )
    expect(shown.every(({ minutesSaved }) => minutesSaved <= 0)).toBe(true)
  })
  it('leave a sound engine alone', () => {
    const view = viewOf([{ faults: [], chance: 0.995 }, one('rings', 3, 0.005)], [3], ['plugs out'])
    expect(nextTests(view, times, named).advice.kind).toBe('none')
    expect(nextTests({ ...view, explanations: [] }, times, named)).toMatchObject({
      nextTests: [],
      advice: { kind: 'none' },
    })
  })
})

it('what is left of two faults after one repair is an explanation of its own', () => {
  const both: Explanation = {
    faults: [
      { cause: 'rings', cylinder: 3 },
      { cause: 'coil', cylinder: 3 },
    ],
    chance: 1,
  }
  const { problem, faults } = problemOf(viewOf([both], [3]), times)
  expect(faults.map(({ cause }) => cause)).toEqual(['rings', 'coil'])
  expect(problem.hypotheses.map(({ name, chance }) => [name, chance])).toEqual([
    ['coil 3 + rings 3', 1],
    ['coil 3', 0],
    ['rings 3', 0],
  ])
  expect(problem.hypotheses.map(({ after }) => after)).toEqual([
    [1, 2],
    [1, fixed],
    [fixed, 2],
  ])
})

// What to do next: the tests worth making, best first, and whether to test at all. The order follows the minutes a test saves
// in the end; the stop does too: advice is a test only while one saves more than it costs.
import { mutualInformation } from '../../inference/expected-information.ts'
import { type Action, valuedActions, valuedWithin } from './look-ahead.ts'
import { type PlanState, isAvailable, testMinutes } from './plan-state.ts'
import { type PlanningProblem, planningProblem } from './planning-problem.ts'
import { repairPlan } from './repair-order.ts'

/** Of an available test: bits about what has to be mended, minutes with what must be opened, expected minutes saved net. */
export type RankedTest = { test: number; bits: number; minutes: number; minutesSaved: number }

export type NextStep = {
  /** Most minutes saved first; `minutesSaved` below 0: costs more than it saves. */
  tests: readonly RankedTest[]
  advice: Action
  /** Expected minutes from here until mended: without any further test, and as advised. */
  withoutTests: number
  asAdvised: number
}

/** How many tests are looked at further ahead: those best by one step and half as many that tell most a minute. */
const shortlistLength = 6

/** Up to four steps ahead, as long as that plans repairs for no more beliefs than this (some 50 ms at 20 hypotheses). */
const mostDepth = 4
const mostCells = 4e6

/** A saving below this many minutes is within the error of any estimate of minutes. */
const leastSaving = 0.5

/** Ranks the available tests and says what to do, looking two to four steps ahead. */
export function planNext(problem: PlanningProblem, state: PlanState): NextStep {
  const straight = repairPlan(problem, state)
  const perEngine = (minutes: number) => minutes / state.total
  const quick = valuedActions(problem, state, 1)
  const ranked: RankedTest[] = []
  for (const { action, minutes } of quick) {
    if (action.kind !== 'test') continue
    ranked.push({
      test: action.test,
      bits: bitsOf(problem, state, action.test),
      minutes: testMinutes(problem, state.open, action.test),
      minutesSaved: perEngine(straight.minutes - minutes),
    })
  }
  const chosen = shortlist(problem, ranked)
  const fewer = withTests(problem, chosen)
  const deep = valuedWithin(
    fewer,
    withDone(state, chosen),
    mostCells / (problem.hypotheses.length * problem.repairs.length),
    mostDepth,
  )
  const better = new Map<number, number>()
  for (const { action, minutes } of deep) {
    if (action.kind === 'test') better.set(chosen[action.test] ?? -1, perEngine(straight.minutes - minutes))
  }
  const tests = ranked
    .map(one => ({ ...one, minutesSaved: better.get(one.test) ?? one.minutesSaved }))
    .sort((a, b) => b.minutesSaved - a.minutesSaved)
  const best = deep[0] ?? { action: { kind: 'leave' as const }, minutes: straight.minutes }
  const withoutTests = perEngine(straight.minutes)
  const asAdvised = perEngine(best.minutes)
  if (best.action.kind === 'test' && withoutTests - asAdvised >= leastSaving) {
    const advice: Action = { kind: 'test', test: chosen[best.action.test] ?? 0 }
    return { tests, advice, withoutTests, asAdvised }
  }
  const repair = best.action.kind === 'test' ? straightAction(straight.first) : best.action
  return {
    tests,
    advice: repair,
    withoutTests,
    asAdvised: best.action.kind === 'test' ? withoutTests : asAdvised,
  }
}

const straightAction = (first: number | null): Action =>
  first === null ? { kind: 'leave' } : { kind: 'repair', repair: first }

/** The tests to look at further, by number, with those that may follow them. */
function shortlist(problem: PlanningProblem, ranked: readonly RankedTest[]): number[] {
  const bySaving = ranked.toSorted((a, b) => b.minutesSaved - a.minutesSaved).slice(0, shortlistLength)
  const byBits = ranked
    .toSorted((a, b) => b.bits / b.minutes - a.bits / a.minutes)
    .slice(0, shortlistLength / 2)
  const first = new Set([...bySaving, ...byBits].map(({ test }) => test))
  const after = [...problem.tests.keys()].filter(test => first.has(problem.tests[test]?.follows ?? -1))
  return [...first, ...after]
}

function withTests(problem: PlanningProblem, chosen: readonly number[]): PlanningProblem {
  const tests = chosen.flatMap(number => {
    const test = problem.tests[number]
    if (!test) return []
    const { follows, ...free } = test
    const at = follows === undefined ? -1 : chosen.indexOf(follows)
    return [at < 0 ? free : { ...free, follows: at }]
  })
  return planningProblem({ ...problem, tests })
}

const withDone = (state: PlanState, chosen: readonly number[]): PlanState => ({
  ...state,
  done: chosen.map(() => false),
})

/** Bits a test tells about what has to be mended: hypotheses that the same repairs change count as one. */
export function bitsOf(problem: PlanningProblem, state: PlanState, test: number): number {
  const planned = problem.tests[test]
  if (!planned || !isAvailable(problem, state, test)) return 0
  const groups = new Map<string, number>()
  const groupOf = problem.hypotheses.map(({ after }, at) => {
    const key = after.map(left => (left === at ? '' : '1')).join()
    const group = groups.get(key) ?? groups.size
    groups.set(key, group)
    return group
  })
  const both = new Float64Array(groups.size * planned.outcomes)
  groupOf.forEach((group, at) => {
    for (let outcome = 0; outcome < planned.outcomes; outcome += 1) {
      const cell = group * planned.outcomes + outcome
      const chance = planned.chances[at * planned.outcomes + outcome] ?? 0
      both[cell] = (both[cell] ?? 0) + ((state.belief[at] ?? 0) / state.total) * chance
    }
  })
  return mutualInformation(both, planned.outcomes)
}

// What to do next: the tests worth making, best first, and whether to test at all. The order follows the minutes a test saves
// in the end; the stop does too: advice is a test only while one saves more than it costs.
import { type Action, valuedActions, valuedWithin } from './look-ahead.ts'
import { type PlanState, testMinutes } from './plan-state.ts'
import { type PlanningProblem, planningProblem } from './planning-problem.ts'
import { repairPlan } from './repair-order.ts'
import { bitsTogether } from './test-bits.ts'

/** Of an available test: bits about what has to be mended, minutes with what must be opened, expected minutes saved net. */
export type RankedTest = { test: number; bits: number; minutes: number; minutesSaved: number }

export type NextStep = {
  /** Those looked at further first, then most minutes saved; `minutesSaved` below 0: costs more than it saves. */
  tests: readonly RankedTest[]
  advice: Action
  /** Expected minutes from here until mended: with a repair (or nothing) next, and as advised. */
  withoutTest: number
  asAdvised: number
}

/** How many tests are looked at further ahead: those best by one step and half as many that tell most a minute. */
const shortlistLength = 6

/** Up to four steps ahead, as long as that plans repairs for no more beliefs than this (some 50 ms at 20 hypotheses). */
const mostDepth = 4
const mostCells = 8e6
/** What a belief costs besides its cells, counted in cells. */
const cellsAVisit = 300

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
      bits: bitsTogether(problem, state, [action.test]),
      minutes: testMinutes(problem, state.open, action.test),
      minutesSaved: perEngine(straight.minutes - minutes),
    })
  }
  const chosen = shortlist(problem, ranked)
  const fewer = withTests(problem, chosen)
  const deep = valuedWithin(
    fewer,
    withDone(state, chosen),
    mostCells / (problem.hypotheses.length * problem.repairs.length + cellsAVisit),
    mostDepth,
  )
  const best = perEngine(deep[0]?.minutes ?? straight.minutes)
  const other = deep.find(({ action }) => action.kind !== 'test')
  const withoutTest = perEngine(other?.minutes ?? straight.minutes)
  const ifFirst = new Map<number, number>()
  for (const { action, minutes } of deep) {
    if (action.kind === 'test') ifFirst.set(chosen[action.test] ?? -1, perEngine(minutes))
  }
  const tests = ranked
    .map(one => ({
      ...one,
      minutesSaved: savedBy(problem, one, ifFirst.get(one.test), { withoutTest, best }),
    }))
    .sort(
      (a, b) => Number(ifFirst.has(b.test)) - Number(ifFirst.has(a.test)) || b.minutesSaved - a.minutesSaved,
    )
  const [first] = tests
  if (first && first.minutesSaved >= leastSaving) {
    return { tests, advice: { kind: 'test', test: first.test }, withoutTest, asAdvised: best }
  }
  return { tests, advice: other?.action ?? { kind: 'leave' }, withoutTest, asAdvised: withoutTest }
}

/**
 * Minutes that a test saves net. Going first, a useless test too is followed by the useful ones: what it adds itself is what
 * it costs less the delay it brings. Where that is under half its minutes, it does not pay, whatever follows.
 */
function savedBy(
  problem: PlanningProblem,
  { test, minutesSaved }: RankedTest,
  minutesIfFirst: number | undefined,
  { withoutTest, best }: { withoutTest: number; best: number },
): number {
  if (minutesIfFirst === undefined) return Math.min(minutesSaved, 0)
  const own = problem.tests[test]?.minutes ?? 0
  const added = own - (minutesIfFirst - best)
  const net = withoutTest - minutesIfFirst
  return added < own / 2 ? Math.min(added - own, net) : net
}

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

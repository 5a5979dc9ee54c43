// What each next step is worth, looking so many steps ahead and then counting on repairs alone. A test pays only where the
// minutes it saves later exceed its own: there is no threshold of belief. Source: Heckerman, Breese & Rommelse 1995 (the
// rule), Jensen et al. 2000 (that a short look-ahead is close to the optimum), both from memory.
import { type Bound, leastMinutes } from './least-minutes.ts'
import {
  type PlanState,
  afterFailedRepair,
  afterOutcome,
  isAvailable,
  repairMinutes,
  testMinutes,
} from './plan-state.ts'
import type { PlanningProblem } from './planning-problem.ts'
import { repairPlan } from './repair-order.ts'

export type Action = { kind: 'test'; test: number } | { kind: 'repair'; repair: number } | { kind: 'leave' }

/** Expected minutes (times the state's total) if this is done next and the best found follows. */
export type ValuedAction = { action: Action; minutes: number }

/** Every possible next step, `depth` steps looked ahead, the cheapest first; of equal ones, repair comes before test. */
export function valuedActions(problem: PlanningProblem, state: PlanState, depth: number): ValuedAction[] {
  const search = { problem, bound: leastMinutes(problem) }
  const plan = repairPlan(problem, state)
  const straight: Action = plan.first === null ? { kind: 'leave' } : { kind: 'repair', repair: plan.first }
  const valued: ValuedAction[] = [{ action: straight, minutes: plan.minutes }]
  if (depth > 1) {
    for (const repair of usefulRepairs(problem, state)) {
      valued.push({
        action: { kind: 'repair', repair },
        minutes: repairValue(search, state, repair, depth, noLimit),
      })
    }
  }
  for (const test of problem.tests.keys()) {
    if (!isAvailable(problem, state, test)) continue
    valued.push({ action: { kind: 'test', test }, minutes: testValue(search, state, test, depth, noLimit) })
  }
  return valued.sort((a, b) => a.minutes - b.minutes)
}

type Search = { problem: PlanningProblem; bound: Bound }
const noLimit = Number.POSITIVE_INFINITY

/** The least expected minutes found with up to `depth` steps before counting on repairs alone. */
function value(search: Search, state: PlanState, depth: number): number {
  const { problem, bound } = search
  let best = repairPlan(problem, state).minutes
  if (depth === 0 || bound(state, state.open) >= best) return best
  for (const test of problem.tests.keys()) {
    if (isAvailable(problem, state, test)) {
      best = Math.min(best, testValue(search, state, test, depth, best))
    }
  }
  if (depth === 1) return best
  for (const repair of usefulRepairs(problem, state)) {
    best = Math.min(best, repairValue(search, state, repair, depth, best))
  }
  return best
}

/** Gives up, with `limit`, as soon as the test cannot be cheaper than that. */
function testValue(search: Search, state: PlanState, test: number, depth: number, limit: number): number {
  const { problem, bound } = search
  const outcomes = problem.tests[test]?.outcomes ?? 0
  let minutes = testMinutes(problem, state.open, test) * state.total
  // What the outcomes still to come must cost at least.
  let rest = bound(state, state.open | (problem.testNeeds[test] ?? 0))
  for (let outcome = 0; outcome < outcomes; outcome += 1) {
    if (minutes + rest >= limit) return limit
    const after = afterOutcome(problem, state, test, outcome)
    if (after.total <= 0) continue
    rest -= bound(after, after.open)
    minutes += value(search, after, depth - 1)
  }
  return minutes
}

function repairValue(search: Search, state: PlanState, repair: number, depth: number, limit: number): number {
  const { problem, bound } = search
  const minutes = repairMinutes(problem, state.open, repair) * state.total
  const after = afterFailedRepair(problem, state, repair)
  if (minutes + bound(after, after.open) >= limit) return limit
  return minutes + value(search, after, depth - 1)
}

/** Repairs that some hypothesis still believed would be changed by. */
function usefulRepairs(problem: PlanningProblem, state: PlanState): number[] {
  const count = state.belief.length
  return [...problem.repairs.keys()].filter(repair =>
    state.belief.some((weight, at) => weight > 0 && problem.after[repair * count + at] !== at),
  )
}

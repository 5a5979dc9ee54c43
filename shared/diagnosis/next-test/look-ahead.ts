// What each next step is worth, looking so many steps ahead and then counting on repairs alone. A test pays only where the
// minutes it saves later exceed its own: there is no threshold of belief. Source: Heckerman, Breese & Rommelse 1995 (the
// rule), Jensen et al. 2000 (that a short look-ahead is close to the optimum), both from memory.
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
  const plan = repairPlan(problem, state)
  const straight: Action = plan.first === null ? { kind: 'leave' } : { kind: 'repair', repair: plan.first }
  const valued: ValuedAction[] = [{ action: straight, minutes: plan.minutes }]
  if (depth > 1) {
    for (const repair of usefulRepairs(problem, state)) {
      valued.push({ action: { kind: 'repair', repair }, minutes: repairValue(problem, state, repair, depth) })
    }
  }
  for (const test of problem.tests.keys()) {
    if (!isAvailable(problem, state, test)) continue
    const minutes = testValue(problem, state, test, depth, Number.POSITIVE_INFINITY)
    valued.push({ action: { kind: 'test', test }, minutes })
  }
  return valued.sort((a, b) => a.minutes - b.minutes)
}

/** The least expected minutes found with up to `depth` steps before counting on repairs alone. */
function value(problem: PlanningProblem, state: PlanState, depth: number): number {
  let best = repairPlan(problem, state).minutes
  if (depth === 0 || best === 0) return best
  for (const test of problem.tests.keys()) {
    if (isAvailable(problem, state, test)) {
      best = Math.min(best, testValue(problem, state, test, depth, best))
    }
  }
  if (depth === 1) return best
  for (const repair of usefulRepairs(problem, state)) {
    best = Math.min(best, repairValue(problem, state, repair, depth))
  }
  return best
}

/** Gives up, with a number too large, as soon as the test cannot be cheaper than `limit`. */
function testValue(
  problem: PlanningProblem,
  state: PlanState,
  test: number,
  depth: number,
  limit: number,
): number {
  const planned = problem.tests[test]
  if (!planned) return Number.POSITIVE_INFINITY
  let minutes = testMinutes(problem, state.open, test) * state.total
  for (let outcome = 0; outcome < planned.outcomes && minutes < limit; outcome += 1) {
    const after = afterOutcome(problem, state, test, outcome)
    if (after.total > 0) minutes += value(problem, after, depth - 1)
  }
  return minutes
}

function repairValue(problem: PlanningProblem, state: PlanState, repair: number, depth: number): number {
  const minutes = repairMinutes(problem, state.open, repair) * state.total
  return minutes + value(problem, afterFailedRepair(problem, state, repair), depth - 1)
}

/** Repairs that some hypothesis still believed would be changed by. */
function usefulRepairs(problem: PlanningProblem, state: PlanState): number[] {
  const count = state.belief.length
  return [...problem.repairs.keys()].filter(repair =>
    state.belief.some((weight, at) => weight > 0 && problem.after[repair * count + at] !== at),
  )
}

// What each next step is worth, looking so many steps ahead and then counting on repairs alone. A test pays only where the
// minutes it saves later exceed its own: there is no threshold of belief. Source: Heckerman, Breese & Rommelse 1995 (the
// rule), Jensen et al. 2000 (that a short look-ahead is close to the optimum), both from memory.
import { type Bound, leastMinutes } from './least-minutes.ts'
import { type PathCodes, noCode, pathCodes } from './path-code.ts'
import {
  type PlanState,
  afterFailedRepair,
  afterOutcome,
  changeChance,
  isAvailable,
  repairCost,
  testMinutes,
} from './plan-state.ts'
import type { PlanningProblem } from './planning-problem.ts'
import { repairPlan } from './repair-order.ts'

export type Action = { kind: 'test'; test: number } | { kind: 'repair'; repair: number } | { kind: 'leave' }

/** Expected minutes (times the state's total) if this is done next and the best found follows. */
export type ValuedAction = { action: Action; minutes: number }

type Search = {
  problem: PlanningProblem
  bound: Bound
  codes: PathCodes
  /** Values found, by path and depth: the order of the same tests does not matter. */
  known: readonly Map<number, number>[]
  /** How many beliefs repairs were planned for. */
  visits: number
}

/** Every possible next step, `depth` steps looked ahead, the cheapest first; of equal ones, repair comes before test. */
export const valuedActions = (problem: PlanningProblem, state: PlanState, depth: number): ValuedAction[] =>
  lookAhead(problem, state, depth).valued

/** The same as deep as `mostVisits` beliefs allow, between two and `mostDepth` steps. */
export function valuedWithin(
  problem: PlanningProblem,
  state: PlanState,
  mostVisits: number,
  mostDepth: number,
): ValuedAction[] {
  let before = lookAhead(problem, state, 1)
  let now = lookAhead(problem, state, 2)
  for (let depth = 3; depth <= mostDepth; depth += 1) {
    // Each step multiplies the beliefs by about the same factor.
    const expected = (now.visits * now.visits) / Math.max(before.visits, 1)
    if (expected > mostVisits) break
    before = now
    now = lookAhead(problem, state, depth)
  }
  return now.valued
}

function lookAhead(problem: PlanningProblem, state: PlanState, depth: number) {
  const known = Array.from({ length: depth + 1 }, () => new Map<number, number>())
  const search: Search = {
    problem,
    bound: leastMinutes(problem),
    codes: pathCodes(problem),
    known,
    visits: 0,
  }
  const plan = repairPlan(problem, state)
  const straight: Action = plan.first === null ? { kind: 'leave' } : { kind: 'repair', repair: plan.first }
  const valued: ValuedAction[] = [{ action: straight, minutes: plan.minutes }]
  if (depth > 1) {
    for (const repair of usefulRepairs(problem, state)) {
      const minutes = repairValue(search, state, 0, repair, depth, noLimit)
      valued.push({ action: { kind: 'repair', repair }, minutes })
    }
  }
  for (const test of problem.tests.keys()) {
    if (!isAvailable(problem, state, test)) continue
    valued.push({
      action: { kind: 'test', test },
      minutes: testValue(search, state, 0, test, depth, noLimit),
    })
  }
  valued.sort((a, b) => a.minutes - b.minutes)
  return { valued, visits: search.visits }
}

const noLimit = Number.POSITIVE_INFINITY

/** The least expected minutes found with up to `depth` steps before counting on repairs alone. */
function value(search: Search, state: PlanState, code: number, depth: number): number {
  const known = search.known[depth]?.get(code)
  if (known !== undefined) return known
  const found = searched(search, state, code, depth)
  if (code !== noCode) search.known[depth]?.set(code, found)
  return found
}

function searched(search: Search, state: PlanState, code: number, depth: number): number {
  const { problem, bound } = search
  search.visits += 1
  let best = repairPlan(problem, state).minutes
  if (depth === 0 || bound(state, state.open) >= best) return best
  for (let test = 0; test < problem.tests.length; test += 1) {
    if (isAvailable(problem, state, test)) {
      best = Math.min(best, testValue(search, state, code, test, depth, best))
    }
  }
  if (depth === 1) return best
  for (const repair of usefulRepairs(problem, state)) {
    best = Math.min(best, repairValue(search, state, code, repair, depth, best))
  }
  return best
}

/** Gives up, with `limit`, as soon as the test cannot be cheaper than that. */
function testValue(
  search: Search,
  state: PlanState,
  code: number,
  test: number,
  depth: number,
  limit: number,
): number {
  const { problem, bound, codes } = search
  const outcomes = problem.tests[test]?.outcomes ?? 0
  let minutes = testMinutes(problem, state.open, test) * state.total
  // What the outcomes still to come must cost at least.
  let rest = bound(state, state.open | (problem.testNeeds[test] ?? 0))
  for (let outcome = 0; outcome < outcomes; outcome += 1) {
    if (minutes + rest >= limit) return limit
    const after = afterOutcome(problem, state, test, outcome)
    if (after.total <= 0) continue
    rest -= bound(after, after.open)
    minutes += value(search, after, codes.withOutcome(code, test, outcome), depth - 1)
  }
  return minutes
}

function repairValue(
  search: Search,
  state: PlanState,
  code: number,
  repair: number,
  depth: number,
  limit: number,
): number {
  const { problem, bound, codes } = search
  const minutes = repairCost(problem, state, repair)
  const after = afterFailedRepair(problem, state, repair)
  if (minutes + bound(after, after.open) >= limit) return limit
  return minutes + value(search, after, codes.withRepair(code, repair), depth - 1)
}

/** Repairs that some hypothesis still believed would be changed by. */
const usefulRepairs = (problem: PlanningProblem, state: PlanState): number[] =>
  [...problem.repairs.keys()].filter(repair => changeChance(problem, state.belief, repair) > 0)

// The cheapest way there is, for problems small enough: dynamic programming over everything that can have happened. Branches
// that cannot be cheaper even if the next test told everything are left out, which changes nothing in the result.
import { leastMinutes } from '../least-minutes.ts'
import {
  type PlanState,
  afterFailedRepair,
  afterOutcome,
  firstState,
  isAvailable,
  repairCost,
  testMinutes,
} from '../plan-state.ts'
import type { PlanningProblem } from '../planning-problem.ts'
import { repairPlan } from '../repair-order.ts'
import { type History, historiesOf } from './history-key.ts'

/** Expected minutes of the best policy from the start of a problem whose chances sum to 1. */
export function exactOptimum(problem: PlanningProblem): { minutes: number; states: number } {
  const memo = new Map<string | number, number>()
  const histories = historiesOf(problem)
  const boundOf = leastMinutes(problem)

  /** Minutes a unit of the state's total. */
  function solve(state: PlanState, history: History): number {
    const key = histories.key(history)
    const known = memo.get(key)
    if (known !== undefined) return known
    let best = repairPlan(problem, state).minutes
    for (const at of problem.repairs.keys()) {
      if ((history.mended & (1 << at)) !== 0) continue
      let minutes = repairCost(problem, state, at)
      const after = afterFailedRepair(problem, state, at)
      if (minutes + boundOf(after, after.open) >= best) continue
      if (after.total > 0) minutes += after.total * solve(after, histories.withRepair(history, at))
      best = Math.min(best, minutes)
    }
    for (const [at, test] of problem.tests.entries()) {
      let minutes = testMinutes(problem, state.open, at) * state.total
      const open = state.open | (problem.testNeeds[at] ?? 0)
      if (!isAvailable(problem, state, at) || minutes + boundOf(state, open) >= best) continue
      for (let outcome = 0; outcome < test.outcomes && minutes < best; outcome += 1) {
        const after = afterOutcome(problem, state, at, outcome)
        if (after.total > 0)
          minutes += after.total * solve(after, histories.withOutcome(history, at, outcome))
      }
      best = Math.min(best, minutes)
    }
    const each = best / state.total
    memo.set(key, each)
    return each
  }
  return { minutes: solve(firstState(problem), histories.start), states: memo.size }
}

// The planner as a policy, and the ways of working that it is compared with.
import { type Action, valuedActions } from '../look-ahead.ts'
import { planNext } from '../plan-next.ts'
import { isAvailable, type PlanState } from '../plan-state.ts'
import type { PlanningProblem } from '../planning-problem.ts'
import { repairPlan } from '../repair-order.ts'
import type { Policy } from './policy-cost.ts'

/** What the product does. */
export const planner = (believed: PlanningProblem): Policy => ({
  believed,
  next: state => planNext(believed, state).advice,
})

/** The bare look-ahead over all actions, `depth` steps. */
export const lookingAhead = (believed: PlanningProblem, depth: number): Policy => ({
  believed,
  next: state => valuedActions(believed, state, depth)[0]?.action ?? { kind: 'leave' },
})

/** Repairs alone, most chance a minute first. */
export const repairsOnly = (believed: PlanningProblem): Policy => ({
  believed,
  next: state => repairOrLeave(believed, state),
})

/** Tests in their written-down order until a repair is at least `sure` to be the right one; then repairs. */
export const fixedOrder = (believed: PlanningProblem, sure: number): Policy => ({
  believed,
  next: state => {
    const next = [...believed.tests.keys()].find(test => isAvailable(believed, state, test))
    const leading = Math.max(...state.belief) / state.total
    if (next === undefined || leading >= sure) return repairOrLeave(believed, state)
    return { kind: 'test', test: next }
  },
})

/** The likeliest part first, tests never. */
export const likeliestPart = (believed: PlanningProblem): Policy => ({
  believed,
  next: state => {
    const at = state.belief.indexOf(Math.max(...state.belief))
    const repair = believed.hypotheses[at]?.after.findIndex(left => left !== at) ?? -1
    return repair < 0 ? { kind: 'leave' } : { kind: 'repair', repair }
  },
})

function repairOrLeave(problem: PlanningProblem, state: PlanState): Action {
  const { first } = repairPlan(problem, state)
  return first === null ? { kind: 'leave' } : { kind: 'repair', repair: first }
}

// What a policy costs on a problem, exactly: every outcome followed with its true chance, whatever the policy believes.
import {
  type PlanState,
  afterFailedRepair,
  afterOutcome,
  firstState,
  repairCost,
  testMinutes,
} from '../plan-state.ts'
import type { Action } from '../look-ahead.ts'
import type { PlanningProblem } from '../planning-problem.ts'
import { leaveMinutes } from '../repair-order.ts'
import { type History, historiesOf } from './history-key.ts'

/** What to do next: from what the policy's own copy of the problem makes of the same outcomes. */
export type Policy = { believed: PlanningProblem; next: (state: PlanState) => Action }

/**
 * Expected figures of one engine. `wrongRepairs` change nothing. `leadingRight`: chance that the fault the policy holds
 * likeliest when the first repair begins is there; `ceiling`: the same for someone who knows the true chances.
 */
export type PolicyCost = {
  minutes: number
  testMinutes: number
  repairs: number
  wrongRepairs: number
  leadingRight: number
  ceiling: number
}

const nothing: PolicyCost = {
  minutes: 0,
  testMinutes: 0,
  repairs: 0,
  wrongRepairs: 0,
  leadingRight: 0,
  ceiling: 0,
}

export function policyCost(truth: PlanningProblem, policy: Policy): PolicyCost {
  const memo = new Map<string | number, PolicyCost>()
  const histories = historiesOf(truth)

  function follow(real: PlanState, believed: PlanState, history: History): PolicyCost {
    const key = histories.key(history)
    const known = memo.get(key)
    if (known) return known
    const cost = perUnit(step(real, believed, history), real.total)
    memo.set(key, cost)
    return cost
  }

  /** Costs times the state's total. */
  function step(real: PlanState, believed: PlanState, history: History): PolicyCost {
    const action = policy.next(believed)
    if (action.kind === 'leave') return { ...nothing, minutes: leaveMinutes(truth, real.belief) }
    if (action.kind === 'repair') {
      const minutes = repairCost(truth, real, action.repair)
      const after = afterFailedRepair(truth, real, action.repair)
      const really = faultChances(truth, real)
      const leading = indexOfLargest(faultChances(policy.believed, believed))
      const first = history.mended === 0
      const own: PolicyCost = {
        minutes,
        testMinutes: 0,
        repairs: real.total,
        wrongRepairs: real.total - (really[action.repair] ?? 0),
        leadingRight: first ? (really[leading] ?? 0) : 0,
        ceiling: first ? Math.max(...really) : 0,
      }
      if (after.total <= 0) return own
      const left = afterFailedRepair(policy.believed, believed, action.repair)
      return plus(own, follow(after, left, histories.withRepair(history, action.repair)), after.total)
    }
    const test = truth.tests[action.test]
    const minutes = testMinutes(truth, real.open, action.test) * real.total
    let cost: PolicyCost = { ...nothing, minutes, testMinutes: minutes }
    for (let outcome = 0; outcome < (test?.outcomes ?? 0); outcome += 1) {
      const after = afterOutcome(truth, real, action.test, outcome)
      if (after.total <= 0) continue
      const left = afterOutcome(policy.believed, believed, action.test, outcome)
      cost = plus(
        cost,
        follow(after, left, histories.withOutcome(history, action.test, outcome)),
        after.total,
      )
    }
    return cost
  }
  return follow(firstState(truth), firstState(policy.believed), histories.start)
}

/** For each repair the chance, times the state's total, that it would change something. */
const faultChances = (problem: PlanningProblem, state: PlanState): number[] =>
  problem.repairs.map((_, repair) =>
    state.belief.reduce(
      (sum, weight, at) => sum + (problem.hypotheses[at]?.after[repair] === at ? 0 : weight),
      0,
    ),
  )

const indexOfLargest = (values: readonly number[]): number => values.indexOf(Math.max(...values))

const plus = (one: PolicyCost, other: PolicyCost, times: number): PolicyCost => ({
  minutes: one.minutes + times * other.minutes,
  testMinutes: one.testMinutes + times * other.testMinutes,
  repairs: one.repairs + times * other.repairs,
  wrongRepairs: one.wrongRepairs + times * other.wrongRepairs,
  leadingRight: one.leadingRight + times * other.leadingRight,
  ceiling: one.ceiling + times * other.ceiling,
})

const perUnit = (cost: PolicyCost, total: number): PolicyCost => plus(nothing, cost, 1 / total)

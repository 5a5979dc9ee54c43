// Where one stands: what is believed, which tests are done, what is open; and how a test or a repair changes that.
import { type PlanningProblem, fixed } from './planning-problem.ts'

/** A name of this file's own is quicker to read in an inner loop than an imported one. */
const nothingLeft: number = fixed

/**
 * `belief`: one weight a hypothesis, not normalised: its sum is the chance of having come this far without being done, so
 * that costs of branches simply add. `open`: set-ups already open, one bit each. `done`: tests already made.
 */
export type PlanState = { belief: Float64Array; total: number; open: number; done: readonly boolean[] }

/** Before anything is planned; `open` and `done` say what the job has already behind it. */
export function firstState(problem: PlanningProblem, open = 0, done: readonly boolean[] = []): PlanState {
  const belief = Float64Array.from(problem.hypotheses, hypothesis => hypothesis.chance)
  const total = belief.reduce((sum, weight) => sum + weight, 0)
  return { belief, total, open, done: problem.tests.map((_, at) => done[at] ?? false) }
}

/** Whether a test can be made now: not done yet, and what it follows is. */
export function isAvailable(problem: PlanningProblem, state: PlanState, test: number): boolean {
  const follows = problem.tests[test]?.follows
  return !state.done[test] && (follows === undefined || state.done[follows] === true)
}

/** Minutes of a test with the set-ups it still has to open. */
export const testMinutes = (problem: PlanningProblem, open: number, test: number): number =>
  (problem.tests[test]?.minutes ?? 0) + problem.opening((problem.testNeeds[test] ?? 0) & ~open)

/** Minutes of a repair with the set-ups it still has to open. */
export const repairMinutes = (problem: PlanningProblem, open: number, repair: number): number =>
  (problem.repairs[repair]?.minutes ?? 0) + problem.opening((problem.repairNeeds[repair] ?? 0) & ~open)

/** For a repair the chance, times the belief's total, that it would change something. */
export function changeChance(problem: PlanningProblem, belief: Float64Array, repair: number): number {
  const from = repair * belief.length
  let chance = 0
  for (let at = 0; at < belief.length; at += 1) {
    if ((problem.after[from + at] as number) !== at) chance += belief[at] as number
  }
  return chance
}

/** Expected minutes of a repair, times the state's total: its own, what it opens, and what it costs if it changes nothing. */
export const repairCost = (problem: PlanningProblem, state: PlanState, repair: number): number =>
  repairMinutes(problem, state.open, repair) * state.total +
  (problem.wrongRepairMinutes ?? 0) * (state.total - changeChance(problem, state.belief, repair))

/** The state after one outcome of a test; its total is that of the state before times the outcome's chance. */
export function afterOutcome(
  problem: PlanningProblem,
  state: PlanState,
  test: number,
  outcome: number,
): PlanState {
  const planned = problem.tests[test]
  const belief = new Float64Array(state.belief.length)
  const done = state.done.slice()
  done[test] = true
  const open = state.open | (problem.testNeeds[test] ?? 0)
  if (!planned) return { belief, total: 0, open, done }
  const { chances, outcomes } = planned
  let total = 0
  for (let at = 0; at < belief.length; at += 1) {
    const weight = (state.belief[at] as number) * (chances[at * outcomes + outcome] as number)
    belief[at] = weight
    total += weight
  }
  return { belief, total, open, done }
}

/** The state after a repair that did not mend everything. */
export function afterFailedRepair(problem: PlanningProblem, state: PlanState, repair: number): PlanState {
  const belief = state.belief.slice()
  const total = mend(problem, belief, repair)
  return { belief, total, open: state.open | (problem.repairNeeds[repair] ?? 0), done: state.done }
}

/** Takes out of a belief what a repair mends and moves what it mends in part; gives the new total. */
export function mend(problem: PlanningProblem, belief: Float64Array, repair: number): number {
  const from = repair * belief.length
  // A hypothesis moves to one that the same repair leaves alone, so nothing is moved twice.
  for (let at = 0; at < belief.length; at += 1) {
    const left = problem.after[from + at] as number
    if (left === at) continue
    if (left !== nothingLeft) belief[left] = (belief[left] as number) + (belief[at] as number)
    belief[at] = 0
  }
  let total = 0
  for (let at = 0; at < belief.length; at += 1) total += belief[at] as number
  return total
}

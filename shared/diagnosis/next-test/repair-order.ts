// What mending costs without further tests: repairs one after the other, the one with most chance a minute first, until it is
// mended. For one fault and perfect checks this order is the cheapest (Kadane & Simon 1977, from memory; a price on wrong
// repairs simply adds to each one's minutes); with shared set-ups and several faults it is a good one.
import { type PlanState, changeChance, mend } from './plan-state.ts'
import { type PlanningProblem, fixed } from './planning-problem.ts'

export type RepairPlan = {
  /** Expected minutes times the state's total. */
  minutes: number
  /** The first repair; null where leaving things as they are is cheapest. */
  first: number | null
}

/** A name of this file's own is quicker to read in an inner loop than an imported one. */
const nothingLeft: number = fixed

/** Mending one of several faults counts as half of mending. */
const shareOfPartialMend = 0.5

export function repairPlan(problem: PlanningProblem, state: PlanState): RepairPlan {
  const belief = state.belief.slice()
  const wrongPrice = problem.wrongRepairMinutes ?? 0
  let { open, total } = state
  let spent = 0
  let first: number | null = null
  let best: RepairPlan = { minutes: leaveMinutes(problem, belief), first: null }
  for (let step = 0; step < problem.repairs.length && total > 0; step += 1) {
    const next = bestRepair(problem, belief, open)
    if (next < 0) break
    first ??= next
    const needs = problem.repairNeeds[next] as number
    spent += ((problem.repairs[next]?.minutes ?? 0) + problem.opening(needs & ~open)) * total
    if (wrongPrice > 0) spent += wrongPrice * (total - changeChance(problem, belief, next))
    open |= needs
    total = mend(problem, belief, next)
    // What is spent only grows: no later end can be cheaper than this one already was.
    if (spent >= best.minutes) break
    const minutes = spent + leaveMinutes(problem, belief)
    if (minutes < best.minutes) best = { minutes, first }
  }
  return best
}

/** The repair with most chance of mending a minute; -1 where none helps. */
function bestRepair(problem: PlanningProblem, belief: Float64Array, open: number): number {
  const { repairs, after, repairNeeds } = problem
  const wrongPrice = problem.wrongRepairMinutes ?? 0
  let best = -1
  let most = 0
  for (let repair = 0; repair < repairs.length; repair += 1) {
    const from = repair * belief.length
    let chance = 0
    for (let at = 0; at < belief.length; at += 1) {
      const left = after[from + at] as number
      if (left === nothingLeft) chance += belief[at] as number
      else if (left !== at) chance += shareOfPartialMend * (belief[at] as number)
    }
    if (chance === 0) continue
    const needs = (repairNeeds[repair] as number) & ~open
    const rate = chance / ((repairs[repair]?.minutes ?? 0) + problem.opening(needs) + wrongPrice)
    if (rate <= most) continue
    most = rate
    best = repair
  }
  return best
}

/** Expected cost of stopping at a belief, times its total. */
export function leaveMinutes(problem: PlanningProblem, belief: Float64Array): number {
  const { leave } = problem
  let minutes = 0
  for (let at = 0; at < belief.length; at += 1) minutes += (belief[at] as number) * (leave[at] as number)
  return minutes
}

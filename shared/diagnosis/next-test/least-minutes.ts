// The least that mending can still cost, even if one knew what is wrong: a bound that lets the search leave out branches which
// cannot be cheaper, without changing what it finds.
import { type PlanState, repairMinutes } from './plan-state.ts'
import { type PlanningProblem, fixed } from './planning-problem.ts'

/** Least minutes times the state's total, for what is open once `open` is. */
export type Bound = (state: PlanState, open: number) => number

export function leastMinutes(problem: PlanningProblem): Bound {
  const known = new Map<number, Float64Array>()
  const count = problem.hypotheses.length
  const of = (hypothesis: number, open: number): number => {
    let least = problem.leave[hypothesis] ?? 0
    for (const repair of problem.repairs.keys()) {
      const left = problem.after[repair * count + hypothesis] ?? hypothesis
      if (left === hypothesis) continue
      const minutes = repairMinutes(problem, open, repair)
      if (minutes >= least) continue
      const rest = left === fixed ? 0 : of(left, open | (problem.repairNeeds[repair] ?? 0))
      least = Math.min(least, minutes + rest)
    }
    return least
  }
  const leastOf = (open: number): Float64Array => {
    const before = known.get(open)
    if (before) return before
    const all = Float64Array.from({ length: count }, (_, at) => of(at, open))
    known.set(open, all)
    return all
  }
  return (state, open) => {
    const least = leastOf(open)
    let bound = 0
    for (let at = 0; at < count; at += 1) bound += (state.belief[at] as number) * (least[at] as number)
    return bound
  }
}

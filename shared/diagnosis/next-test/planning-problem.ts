// The planner's view of a diagnosis, which knows nothing of engines: what could be wrong, what mends it, what could be tested,
// and what each costs in minutes. All prices are minutes; a part's price or the bother of a test comes in as minutes too.

/** A repair: it takes `minutes`, plus the set-ups it needs that are not open yet. */
export type PlannedRepair = { name: string; minutes: number; needs: readonly number[] }

/**
 * One thing that could be wrong, alone or together with others, and whatever else makes tests come out as they do.
 * `after[r]`: number of the hypothesis that is left once repair r is done: `fixed`, itself where the repair does not help,
 * or a smaller one where there were several faults. `leaveMinutes`: what it costs if one stops here (0 if nothing is wrong).
 */
export type Hypothesis = { name: string; chance: number; after: readonly number[]; leaveMinutes: number }

/** The mark in `after` that nothing is left to mend. */
export const fixed = -1

/** `chances`: P(outcome | hypothesis), rows of `outcomes`. `follows`: a test that must have been done before. */
export type PlannedTest = {
  name: string
  minutes: number
  needs: readonly number[]
  follows?: number
  outcomes: number
  chances: Float64Array
}

/** Something opened or taken apart once for all that needs it. */
export type SetUp = { name: string; minutes: number }

/**
 * At most 30 set-ups; chances of the hypotheses need not sum to 1. `wrongRepairMinutes`: what a repair that changes nothing
 * costs beyond its own minutes (a part that cannot go back, and trust).
 */
export type ProblemParts = {
  hypotheses: readonly Hypothesis[]
  repairs: readonly PlannedRepair[]
  tests: readonly PlannedTest[]
  setUps: readonly SetUp[]
  wrongRepairMinutes?: number
}

/** The parts with what the inner loops read, laid out flat once. */
export type PlanningProblem = ProblemParts & {
  /** `after` of hypothesis h by repair r at r * hypotheses + h. */
  after: Int16Array
  leave: Float64Array
  repairNeeds: Int32Array
  testNeeds: Int32Array
  /** Minutes of opening the set-ups of a mask. */
  opening: (mask: number) => number
}

/** Lays a problem out for the planner. */
export function planningProblem(parts: ProblemParts): PlanningProblem {
  const { hypotheses, repairs, tests, setUps } = parts
  const count = hypotheses.length
  const after = new Int16Array(count * repairs.length)
  hypotheses.forEach((hypothesis, at) => {
    for (const repair of repairs.keys()) after[repair * count + at] = hypothesis.after[repair] ?? at
  })
  const maskOf = ({ needs }: { needs: readonly number[] }) =>
    needs.reduce((mask, setUp) => mask | (1 << setUp), 0)
  const minutesOpening = (mask: number): number =>
    setUps.reduce((sum, { minutes }, at) => sum + ((mask & (1 << at)) === 0 ? 0 : minutes), 0)
  const known = new Map<number, number>()
  return {
    ...parts,
    after,
    leave: Float64Array.from(hypotheses, hypothesis => hypothesis.leaveMinutes),
    repairNeeds: Int32Array.from(repairs, maskOf),
    testNeeds: Int32Array.from(tests, maskOf),
    opening: mask => {
      if (mask === 0) return 0
      const before = known.get(mask)
      if (before !== undefined) return before
      const minutes = minutesOpening(mask)
      known.set(mask, minutes)
      return minutes
    },
  }
}

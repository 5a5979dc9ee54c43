// A number for each set of outcomes and repairs on a path of the search, whatever their order, so that a belief reached twice
// is worked out once.
import { type PlanningProblem, fixed } from './planning-problem.ts'

/** The code of a path that must not be shared. */
export const noCode = -1

export type PathCodes = {
  withOutcome: (code: number, test: number, outcome: number) => number
  withRepair: (code: number, repair: number) => number
}

/** Codes from 0, the empty path. `noCode` where there are too many to number, and for a test made after half a repair. */
export function pathCodes(problem: PlanningProblem): PathCodes {
  const count = problem.hypotheses.length
  const repairs = problem.repairs.length
  const weights: number[] = []
  let size = 2 ** repairs
  for (const { outcomes } of problem.tests) {
    weights.push(size)
    size *= outcomes + 1
  }
  if (size > Number.MAX_SAFE_INTEGER) return { withOutcome: () => noCode, withRepair: () => noCode }
  const partial = [...problem.repairs.keys()].map(repair =>
    problem.hypotheses.some((_, at) => {
      const left = problem.after[repair * count + at]
      return left !== fixed && left !== at
    }),
  )
  const halfMended = (code: number) =>
    partial.some((is, repair) => is && Math.floor(code / 2 ** repair) % 2 === 1)
  const anyPartial = partial.includes(true)
  return {
    withOutcome: (code, test, outcome) => {
      if (code === noCode || (anyPartial && halfMended(code))) return noCode
      return code + (weights[test] ?? 0) * (outcome + 1)
    },
    withRepair: (code, repair) => (code === noCode ? noCode : code + 2 ** repair),
  }
}

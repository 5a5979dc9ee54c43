// What a test, or several together, would tell about what has to be mended.
import { mutualInformation } from '../../inference/expected-information.ts'
import type { PlanState } from './plan-state.ts'
import type { PlanningProblem } from './planning-problem.ts'

/** Several tests are taken together up to so many combinations of outcomes; beyond, the first of them count. */
const mostCombinations = 243

/** Bits about what has to be mended that the tests tell together: hypotheses that the same repairs change count as one. */
export function bitsTogether(problem: PlanningProblem, state: PlanState, tests: readonly number[]): number {
  let rows: number[][] = problem.hypotheses.map(() => [1])
  for (const number of tests) {
    const test = problem.tests[number]
    if (!test || (rows[0]?.length ?? 0) * test.outcomes > mostCombinations) continue
    rows = rows.map((row, at) => {
      const own = Array.from(test.chances.subarray(at * test.outcomes, (at + 1) * test.outcomes))
      return row.flatMap(so => own.map(chance => so * chance))
    })
  }
  const width = rows[0]?.length ?? 1
  const groups = new Map<string, number>()
  const groupOf = problem.hypotheses.map(({ after }, at) => {
    const key = after.map(left => (left === at ? '' : '1')).join()
    const group = groups.get(key) ?? groups.size
    groups.set(key, group)
    return group
  })
  const both = new Float64Array(groups.size * width)
  for (const [at, row] of rows.entries()) {
    const share = (state.belief[at] ?? 0) / state.total
    for (const [outcome, chance] of row.entries()) {
      const cell = (groupOf[at] ?? 0) * width + outcome
      both[cell] = (both[cell] ?? 0) + share * chance
    }
  }
  return mutualInformation(both, width)
}

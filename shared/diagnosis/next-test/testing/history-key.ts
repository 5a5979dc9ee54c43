// A name for all histories that leave the same belief: which tests came out how, and which repairs are done. Where several
// faults can be there at once, a test also counts by what had been mended when it was made.
import { type PlanningProblem, fixed } from '../planning-problem.ts'

export type History = {
  /** Outcome of each test, -1 where not made; and the repairs done when it was made, one bit each. */
  outcomes: readonly number[]
  mendedThen: readonly number[]
  mended: number
}

export const noHistory = (problem: PlanningProblem): History => ({
  outcomes: problem.tests.map(() => -1),
  mendedThen: problem.tests.map(() => 0),
  mended: 0,
})

export const withOutcome = (history: History, test: number, outcome: number): History => ({
  ...history,
  outcomes: history.outcomes.with(test, outcome),
  mendedThen: history.mendedThen.with(test, history.mended),
})

export const withRepair = (history: History, repair: number): History => ({
  ...history,
  mended: history.mended | (1 << repair),
})

/** Repairs that leave something of a hypothesis with several faults. */
export function partialRepairs(problem: PlanningProblem): number {
  let mask = 0
  problem.hypotheses.forEach(({ after }, at) => {
    after.forEach((left, repair) => {
      if (left !== fixed && left !== at) mask |= 1 << repair
    })
  })
  return mask
}

export function historyKey(problem: PlanningProblem, history: History, partial: number): string | number {
  if (partial === 0) {
    // One fault: a number does, and is several times as fast.
    let key = 0
    for (const [at, outcome] of history.outcomes.entries()) {
      key = key * ((problem.tests[at]?.outcomes ?? 0) + 1) + outcome + 1
    }
    return key * 2 ** problem.repairs.length + history.mended
  }
  const tests = history.outcomes.map((outcome, at) =>
    outcome < 0 ? '-' : `${outcome}@${(history.mendedThen[at] ?? 0) & partial}`,
  )
  return `${history.mended}|${tests.join(',')}`
}

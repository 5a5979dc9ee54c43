// A name for all histories that leave the same belief: which tests came out how, and which repairs are done. Where several
// faults can be there at once, a test also counts by what had been mended when it was made.
import { pathCodes } from '../path-code.ts'
import { type PlanningProblem, fixed } from '../planning-problem.ts'

/** With one fault at a time a number says it all, and is many times as fast; else outcomes are kept in words. */
export type History = { code: number; words: string; mended: number }

export type Histories = {
  start: History
  withOutcome: (history: History, test: number, outcome: number) => History
  withRepair: (history: History, repair: number) => History
  key: (history: History) => string | number
}

export function historiesOf(problem: PlanningProblem): Histories {
  const codes = pathCodes(problem)
  const partial = partialRepairs(problem)
  const start = { code: 0, words: '', mended: 0 }
  if (partial === 0) {
    return {
      start,
      withOutcome: (history, test, outcome) => ({
        ...history,
        code: codes.withOutcome(history.code, test, outcome),
      }),
      withRepair: ({ code, words, mended }, repair) => ({
        code: codes.withRepair(code, repair),
        words,
        mended: mended | (1 << repair),
      }),
      key: ({ code }) => code,
    }
  }
  return {
    start,
    withOutcome: ({ code, words, mended }, test, outcome) => ({
      code,
      words: [...words.split(' '), `${test}=${outcome}@${mended & partial}`].sort().join(' '),
      mended,
    }),
    withRepair: ({ code, words, mended }, repair) => ({ code, words, mended: mended | (1 << repair) }),
    key: ({ words, mended }) => `${mended}|${words}`,
  }
}

/** Repairs that leave something of a hypothesis with several faults. */
function partialRepairs(problem: PlanningProblem): number {
  let mask = 0
  problem.hypotheses.forEach(({ after }, at) => {
    after.forEach((left, repair) => {
      if (left !== fixed && left !== at) mask |= 1 << repair
    })
  })
  return mask
}

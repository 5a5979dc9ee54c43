// A problem whose numbers are not quite right: what the planner believes where the truth is another.
import { type Random, randomFrom } from '../../../inference/testing/random-network.ts'
import { type PlanningProblem, planningProblem } from '../planning-problem.ts'

/** Standard normal numbers (Box and Muller). */
export const normalFrom = (random: Random) => (): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** A distribution, each chance moved by a normal step of sd `logitSd` in log-odds of one outcome against another. */
export function moved(row: readonly number[], logitSd: number, normal: () => number): number[] {
  const weights = row.map(chance => chance * Math.exp((logitSd / Math.SQRT2) * normal()))
  const sum = weights.reduce((total, weight) => total + weight, 0)
  return weights.map(weight => weight / sum)
}

/** Every probability moved by sd `logitSd` in log-odds, every minute by sd `minuteSd` in logs. */
export function disturbed(
  problem: PlanningProblem,
  seed: number,
  logitSd: number,
  minuteSd = 0,
): PlanningProblem {
  const normal = normalFrom(randomFrom(seed))
  const priors = moved(
    problem.hypotheses.map(({ chance }) => chance),
    logitSd,
    normal,
  )
  const minutes = <T extends { minutes: number }>(item: T): T => ({
    ...item,
    minutes: item.minutes * Math.exp(minuteSd * normal()),
  })
  return planningProblem({
    ...problem,
    hypotheses: problem.hypotheses.map((hypothesis, at) => ({ ...hypothesis, chance: priors[at] ?? 0 })),
    repairs: problem.repairs.map(minutes),
    setUps: problem.setUps.map(minutes),
    tests: problem.tests.map(minutes).map(test => ({
      ...test,
      chances: Float64Array.from(
        problem.hypotheses.flatMap((_, at) =>
          moved(
            Array.from(test.chances.slice(at * test.outcomes, (at + 1) * test.outcomes)),
            logitSd,
            normal,
          ),
        ),
      ),
    })),
  })
}

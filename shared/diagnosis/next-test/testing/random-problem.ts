// Random small planning problems with one fault, shared set-ups and imperfect tests, from one seed.
import { randomFrom } from '../../../inference/testing/random-network.ts'
import {
  type Hypothesis,
  type PlannedTest,
  type PlanningProblem,
  planningProblem,
} from '../planning-problem.ts'

export type ProblemSize = { causes: number; tests: number; pairs?: number }

const logUniform = (random: () => number, low: number, high: number): number =>
  Math.exp(Math.log(low) + random() * (Math.log(high) - Math.log(low)))

/**
 * Causes with log-uniform repair minutes 10 to 240; tests of 3 to 40 minutes that one to three causes answer to (0.70 to 0.97)
 * and others seldom (0.02 to 0.20), a third of them with three outcomes; set-ups of 10 to 40 minutes that several tests and
 * repairs share. `pairs`: so many hypotheses of two faults at once, each a fifth as likely as one; a test answers to either.
 */
export function randomProblem(seed: number, size: ProblemSize): PlanningProblem {
  const random = randomFrom(seed)
  const causes = Array.from({ length: size.causes }, (_, at) => at)
  const setUps = [0, 1, 2].map(at => ({ name: `set-up ${at}`, minutes: logUniform(random, 10, 40) }))
  const someNeeds = () => (random() < 0.5 ? [Math.floor(random() * setUps.length)] : [])
  const repairs = causes.map(at => ({
    name: `repair ${at}`,
    minutes: logUniform(random, 10, 240),
    needs: someNeeds(),
  }))
  const raw = causes.map(() => -Math.log(1 - random()))
  const sets: { faults: number[]; weight: number }[] = causes.map(at => ({
    faults: [at],
    weight: raw[at] ?? 0,
  }))
  while (sets.length < size.causes + (size.pairs ?? 0)) {
    const faults = [Math.floor(random() * size.causes), Math.floor(random() * size.causes)].sort(
      (a, b) => a - b,
    )
    const [a = 0, b = 0] = faults
    if (a === b || sets.some(set => set.faults.join() === faults.join())) continue
    sets.push({ faults, weight: 0.2 * ((raw[a] ?? 0) + (raw[b] ?? 0)) })
  }
  const sum = sets.reduce((total, { weight }) => total + weight, 0)
  const indexOf = (faults: readonly number[]) => sets.findIndex(set => set.faults.join() === faults.join())
  const hypotheses = sets.map(
    ({ faults, weight }): Hypothesis => ({
      name: faults.join(' and '),
      chance: weight / sum,
      after: causes.map(repair => indexOf(faults.filter(fault => fault !== repair))),
      leaveMinutes: 10_000,
    }),
  )
  const tests = Array.from({ length: size.tests }, (_, at): PlannedTest => {
    const answering = new Map(
      causes
        .map(cause => ({ cause, key: random() }))
        .sort((a, b) => a.key - b.key)
        .slice(0, 1 + Math.floor(random() * 3))
        .map(({ cause }) => [cause, 0.7 + 0.27 * random()]),
    )
    const falseAlarm = causes.map(() => 0.02 + 0.18 * random())
    const three = random() < 1 / 3
    const chances = sets.flatMap(({ faults }) => {
      const silent = faults.reduce(
        (product, fault) => product * (1 - (answering.get(fault) ?? falseAlarm[fault] ?? 0)),
        1,
      )
      const bad = 1 - silent
      return three ? [bad * bad, 2 * bad * silent, silent * silent] : [bad, silent]
    })
    return {
      name: `test ${at}`,
      minutes: 3 + 37 * random(),
      needs: someNeeds(),
      outcomes: three ? 3 : 2,
      chances: Float64Array.from(chances),
    }
  })
  return planningProblem({ hypotheses, repairs, tests, setUps })
}

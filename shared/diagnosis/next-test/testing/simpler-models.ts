// The simpler models that the planner has to beat: what someone believes who takes one fault for granted, or weighs every test
// on its own.
import { type PlanningProblem, planningProblem } from '../planning-problem.ts'

/** Numbers of the repairs that change a hypothesis: its faults. */
const faultsOf = (problem: PlanningProblem, hypothesis: number): number[] =>
  (problem.hypotheses[hypothesis]?.after ?? []).flatMap((left, repair) =>
    left === hypothesis ? [] : [repair],
  )

/** Two faults at once are held impossible; all else as it is. */
export function oneFaultOnly(problem: PlanningProblem): PlanningProblem {
  const single = problem.hypotheses.map((_, at) => faultsOf(problem, at).length === 1)
  const total = problem.hypotheses.reduce((sum, { chance }, at) => sum + (single[at] ? chance : 0), 0)
  return planningProblem({
    ...problem,
    hypotheses: problem.hypotheses.map((hypothesis, at) => ({
      ...hypothesis,
      chance: single[at] ? hypothesis.chance / total : 0,
    })),
  })
}

/**
 * Simple (naive) Bayes: one class a fault; each test counts by its average chance given that fault, as if tests erred
 * independently. Written as the same problem with all belief on one hypothesis a fault.
 */
export function simpleBayes(problem: PlanningProblem): PlanningProblem {
  const classes = problem.repairs.map((_, fault) => {
    const members = [...problem.hypotheses.keys()].filter(at => faultsOf(problem, at).includes(fault))
    const stands = members.find(at => faultsOf(problem, at).length === 1) ?? -1
    const chance = members.reduce((sum, at) => sum + (problem.hypotheses[at]?.chance ?? 0), 0)
    return { members, stands, chance }
  })
  const total = classes.reduce((sum, { chance }) => sum + chance, 0)
  return planningProblem({
    ...problem,
    hypotheses: problem.hypotheses.map((hypothesis, at) => {
      const own = classes.find(({ stands }) => stands === at)
      return { ...hypothesis, chance: own ? own.chance / total : 0 }
    }),
    tests: problem.tests.map(test => {
      const chances = test.chances.slice()
      for (const { members, stands, chance } of classes) {
        for (let outcome = 0; outcome < test.outcomes; outcome += 1) {
          const sum = members.reduce((so, at) => {
            const weight = problem.hypotheses[at]?.chance ?? 0
            return so + weight * (test.chances[at * test.outcomes + outcome] ?? 0)
          }, 0)
          chances[stands * test.outcomes + outcome] = sum / chance
        }
      }
      return { ...test, chances }
    }),
  })
}

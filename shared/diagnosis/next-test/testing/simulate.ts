// One engine drawn from a problem and worked on until it is mended: what is wrong and how each test comes out are thrown.
import { type Random } from '../../../inference/testing/random-network.ts'
import { afterFailedRepair, afterOutcome, firstState, repairMinutes, testMinutes } from '../plan-state.ts'
import { type PlanningProblem, fixed } from '../planning-problem.ts'
import type { Policy } from './policy-cost.ts'

export type Worked = {
  minutes: number
  tests: number
  repairs: number
  wrongRepairs: number
  mended: boolean
}

export function workOn(truth: PlanningProblem, policy: Policy, random: Random): Worked {
  let wrong = draw(
    truth.hypotheses.map(({ chance }) => chance),
    random,
  )
  let believed = firstState(policy.believed)
  let open = 0
  const worked: Worked = { minutes: 0, tests: 0, repairs: 0, wrongRepairs: 0, mended: false }
  while (wrong !== fixed) {
    const action = policy.next(believed)
    if (action.kind === 'leave') return { ...worked, minutes: worked.minutes + (truth.leave[wrong] ?? 0) }
    if (action.kind === 'test') {
      const test = truth.tests[action.test]
      if (!test) return worked
      worked.minutes += testMinutes(truth, open, action.test)
      worked.tests += 1
      open |= truth.testNeeds[action.test] ?? 0
      const row = Array.from(test.chances.slice(wrong * test.outcomes, (wrong + 1) * test.outcomes))
      believed = afterOutcome(policy.believed, believed, action.test, draw(row, random))
    } else {
      worked.minutes += repairMinutes(truth, open, action.repair)
      worked.repairs += 1
      open |= truth.repairNeeds[action.repair] ?? 0
      const left = truth.hypotheses[wrong]?.after[action.repair] ?? wrong
      if (left === wrong) {
        worked.wrongRepairs += 1
        worked.minutes += truth.wrongRepairMinutes ?? 0
      }
      wrong = left
      believed = afterFailedRepair(policy.believed, believed, action.repair)
    }
  }
  return { ...worked, mended: true }
}

function draw(chances: readonly number[], random: Random): number {
  let left = random() * chances.reduce((sum, chance) => sum + chance, 0)
  const at = chances.findIndex(chance => {
    left -= chance
    return left < 0
  })
  return at < 0 ? chances.length - 1 : at
}

// Laws of the planner on random problems: what must hold whatever the numbers are.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { valuedActions } from './look-ahead.ts'
import { planNext } from './plan-next.ts'
import { firstState } from './plan-state.ts'
import { type PlanningProblem, planningProblem } from './planning-problem.ts'
import { repairPlan } from './repair-order.ts'
import { randomProblem } from './testing/random-problem.ts'

const problems = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    causes: fc.integer({ min: 2, max: 6 }),
    tests: fc.integer({ min: 1, max: 5 }),
    pairs: fc.integer({ min: 0, max: 1 }),
  })
  .map(({ seed, ...size }) => ({ seed, problem: randomProblem(seed, size) }))
const law = (check: (problem: PlanningProblem, seed: number) => void) =>
  fc.assert(
    fc.property(problems, ({ problem, seed }) => check(problem, seed)),
    { numRuns: 60 },
  )
const start = (problem: PlanningProblem, open = 0) => firstState(problem, open)

it('looking further ahead never costs more, and never more than repairs alone', () => {
  law(problem => {
    const costs = [1, 2, 3].map(depth => valuedActions(problem, start(problem), depth)[0]?.minutes ?? 0)
    const [one = 0, two = 0, three = 0] = costs
    const alone = repairPlan(problem, start(problem)).minutes
    expect(one).toBeLessThanOrEqual(alone + 1e-9)
    expect(two).toBeLessThanOrEqual(one + 1e-9)
    expect(three).toBeLessThanOrEqual(two + 1e-9)
  })
})

it('what is open already never makes the way longer', () => {
  law(problem => {
    const closed = valuedActions(problem, start(problem), 2)[0]?.minutes ?? 0
    const open = valuedActions(problem, start(problem, 0b111), 2)[0]?.minutes ?? 0
    // The order of repairs is greedy where set-ups are shared, so the plan found may be a little worse: 2 % is allowed for it.
    expect(open).toBeLessThan(closed + 1e-9 + 0.02 * closed)
  })
})

it('a test whose outcome does not depend on the cause is worth no bit and is never advised', () => {
  law(problem => {
    const deaf = {
      name: 'deaf',
      minutes: 2,
      needs: [],
      outcomes: 2,
      chances: Float64Array.from(problem.hypotheses.flatMap(() => [0.4, 0.6])),
    }
    const withDeaf = planningProblem({ ...problem, tests: [...problem.tests, deaf] })
    const step = planNext(withDeaf, start(withDeaf))
    const number = problem.tests.length
    const ranked = step.tests.find(({ test }) => test === number)
    expect(ranked?.bits).toBeLessThan(1e-9)
    expect(ranked?.minutesSaved).toBeLessThanOrEqual(0)
    expect(step.advice).not.toEqual({ kind: 'test', test: number })
  })
})

it('a test is advised exactly where one saves minutes against the best repair', () => {
  law(problem => {
    const { tests, advice, withoutTest, asAdvised } = planNext(problem, start(problem))
    const [first] = tests
    expect(advice.kind === 'test').toBe((first?.minutesSaved ?? 0) >= 0.5)
    expect(asAdvised).toBeLessThanOrEqual(withoutTest + 1e-9)
  })
})

it('does not depend on the order in which causes and tests are written down', () => {
  law(problem => {
    const turned = backwards(problem)
    const one = planNext(problem, start(problem))
    const other = planNext(turned, start(turned))
    expect(other.asAdvised).toBeCloseTo(one.asAdvised, 6)
    expect(other.advice.kind).toBe(one.advice.kind)
    const last = problem.tests.length - 1
    for (const { test, bits, minutes } of one.tests) {
      const same = other.tests.find(each => each.test === last - test)
      expect(same?.bits).toBeCloseTo(bits, 9)
      expect(same?.minutes).toBeCloseTo(minutes, 9)
    }
  })
})

it('all minutes doubled double every cost and change no advice', () => {
  law(problem => {
    const twice = <T extends { minutes: number }>(items: readonly T[]) =>
      items.map(item => ({ ...item, minutes: 2 * item.minutes }))
    const slow = planningProblem({
      hypotheses: problem.hypotheses.map(each => ({ ...each, leaveMinutes: 2 * each.leaveMinutes })),
      repairs: twice(problem.repairs),
      tests: twice(problem.tests),
      setUps: twice(problem.setUps),
    })
    const [one] = valuedActions(problem, start(problem), 2)
    const [other] = valuedActions(slow, start(slow), 2)
    expect(other?.minutes).toBeCloseTo(2 * (one?.minutes ?? 0), 6)
    expect(other?.action).toEqual(one?.action)
  })
})

function backwards(problem: PlanningProblem): PlanningProblem {
  const count = problem.hypotheses.length
  return planningProblem({
    ...problem,
    hypotheses: problem.hypotheses.toReversed().map(each => ({
      ...each,
      after: each.after.toReversed().map(left => (left < 0 ? left : count - 1 - left)),
    })),
    repairs: problem.repairs.toReversed(),
    tests: problem.tests.toReversed().map(test => ({
      ...test,
      chances: Float64Array.from(
        problem.hypotheses
          .map((_, at) => Array.from(test.chances.subarray(at * test.outcomes, (at + 1) * test.outcomes)))
          .reverse()
          .flat(),
      ),
    })),
  })
}

// The planner against the exact optimum on seeded small problems, and the laws of stopping.
import { describe, expect, it } from 'vitest'
import { randomFrom } from '../../inference/testing/random-network.ts'
import { planNext } from './plan-next.ts'
import { firstState } from './plan-state.ts'
import { type PlanningProblem, fixed, planningProblem } from './planning-problem.ts'
import { repairPlan } from './repair-order.ts'
import { disturbed } from './testing/disturbed.ts'
import { exactOptimum } from './testing/exact-optimum.ts'
import { fixedOrder, lookingAhead, planner, repairsOnly } from './testing/policies.ts'
import { policyCost } from './testing/policy-cost.ts'
import { randomProblem } from './testing/random-problem.ts'
import { oneFaultOnly, simpleBayes } from './testing/simpler-models.ts'
import { workOn } from './testing/simulate.ts'

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const high = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length * 0.95)] ?? 0

describe.each([
  ['one fault', { causes: 5, tests: 5 }],
  ['one or two faults', { causes: 5, tests: 4, pairs: 2 }],
])('40 problems of %s', (_name, size) => {
  const problems = Array.from({ length: 40 }, (_, at) => randomProblem(at + 1, size))
  const optima = problems.map(problem => exactOptimum(problem).minutes)
  const ratios = (costs: readonly number[]) => costs.map((cost, at) => cost / (optima[at] ?? 1))
  const ours = problems.map(problem => policyCost(problem, planner(problem)).minutes)

  it('no way of working beats the exact optimum', () => {
    const others = problems.flatMap((problem, at) =>
      [lookingAhead(problem, 1), repairsOnly(problem), fixedOrder(problem, 0.9)].map(
        policy => policyCost(problem, policy).minutes / (optima[at] ?? 1),
      ),
    )
    expect(Math.min(...others, ...ratios(ours))).toBeGreaterThan(1 - 1e-9)
  })
  it('costs at most 1.02 of the optimum on average and 1.05 in the worst twentieth', () => {
    expect(mean(ratios(ours))).toBeLessThan(1.02)
    expect(high(ratios(ours))).toBeLessThan(1.05)
  })
  it('costs at most 1.08 with every probability off by 0.5 in log-odds', () => {
    const costs = problems.map((problem, at) => {
      const believed = disturbed(problem, 1_000 + at, 0.5)
      return policyCost(problem, planner(believed)).minutes
    })
    expect(mean(ratios(costs))).toBeLessThan(1.08)
  })
  it('mends 400 drawn engines in the minutes expected, fewer than in fixed order', () => {
    const random = randomFrom(11)
    const draws = problems.flatMap(problem =>
      Array.from({ length: 10 }, () => ({
        planned: workOn(problem, planner(problem), random),
        fixedly: workOn(problem, fixedOrder(problem, 0.9), random),
      })),
    )
    expect(draws.every(({ planned, fixedly }) => planned.mended && fixedly.mended)).toBe(true)
    const minutes = draws.map(({ planned }) => planned.minutes)
    const error = Math.sqrt(mean(minutes.map(each => (each - mean(minutes)) ** 2)) / minutes.length)
    expect(Math.abs(mean(minutes) - mean(ours))).toBeLessThan(4 * error)
    expect(mean(minutes)).toBeLessThan(mean(draws.map(({ fixedly }) => fixedly.minutes)))
  })
  it('makes 0.95 of the saving that there is over tests in a fixed order', () => {
    const fixedCosts = problems.map(problem => policyCost(problem, fixedOrder(problem, 0.9)).minutes)
    const saved = mean(fixedCosts) - mean(ours)
    expect(saved / (mean(fixedCosts) - mean(optima))).toBeGreaterThan(0.95)
  })
})

it('beats simple Bayes and one-fault-only where two faults can be there at once', () => {
  const problems = Array.from({ length: 40 }, (_, at) =>
    randomProblem(at + 1, { causes: 5, tests: 4, pairs: 2 }),
  )
  const minutes = (believe: (problem: PlanningProblem) => PlanningProblem) =>
    mean(problems.map(problem => policyCost(problem, planner(believe(problem))).minutes))
  const ours = minutes(problem => problem)
  expect(minutes(simpleBayes)).toBeGreaterThan(ours * 1.003)
  expect(minutes(oneFaultOnly)).toBeGreaterThan(ours * 1.01)
})

describe('stopping', () => {
  const two = (test: { minutes: number; right: number }, repairs: [number, number], chance = 0.5) =>
    planningProblem({
      hypotheses: [
        { name: 'a', chance, after: [fixed, 0], leaveMinutes: 10_000 },
        { name: 'b', chance: 1 - chance, after: [1, fixed], leaveMinutes: 10_000 },
      ],
      repairs: repairs.map((minutes, at) => ({ name: `${at}`, minutes, needs: [] })),
      tests: [
        {
          name: 'test',
          minutes: test.minutes,
          needs: [],
          outcomes: 2,
          chances: Float64Array.of(test.right, 1 - test.right, 1 - test.right, test.right),
        },
      ],
      setUps: [],
    })

  it('by hand: a perfect ten-minute test between two repairs of 100 saves 50 - 10', () => {
    const problem = two({ minutes: 10, right: 1 }, [100, 100])
    const step = planNext(problem, firstState(problem))
    expect(step.withoutTest).toBeCloseTo(150, 9)
    expect(step.tests[0]).toMatchObject({ test: 0, minutes: 10, bits: 1 })
    expect(step.tests[0]?.minutesSaved).toBeCloseTo(40, 9)
    expect(step.advice).toEqual({ kind: 'test', test: 0 })
  })
  it('advises the repair where the same test costs more than it saves, though it would tell the whole bit', () => {
    const problem = two({ minutes: 10, right: 1 }, [12, 12])
    const step = planNext(problem, firstState(problem))
    expect(step.advice.kind).toBe('repair')
    expect(step.tests[0]).toMatchObject({ bits: 1 })
    expect(step.tests[0]?.minutesSaved).toBeCloseTo(-4, 9)
  })
  it('tests on at 95 % belief where the other repair is dear, and stops at 60 % where both are cheap', () => {
    const dear = two({ minutes: 5, right: 0.98 }, [1_000, 20], 0.95)
    expect(planNext(dear, firstState(dear)).advice.kind).toBe('test')
    const cheap = two({ minutes: 5, right: 0.98 }, [10, 10], 0.6)
    expect(planNext(cheap, firstState(cheap)).advice.kind).toBe('repair')
  })
  it('never offers a test that tells nothing, and leaves well alone', () => {
    const deaf = two({ minutes: 1, right: 0.5 }, [500, 500])
    const step = planNext(deaf, firstState(deaf))
    expect(step.advice.kind).toBe('repair')
    expect(step.tests[0]?.bits).toBeCloseTo(0, 12)
    const sound = planningProblem({
      ...deaf,
      hypotheses: [{ name: 'sound', chance: 1, after: [0, 0], leaveMinutes: 0 }],
      tests: [],
    })
    expect(planNext(sound, firstState(sound)).advice).toEqual({ kind: 'leave' })
  })
  it('prices a set-up once for all that share it, and not at all where it is already open', () => {
    const problem = planningProblem({
      ...two({ minutes: 5, right: 0.95 }, [100, 100]),
      setUps: [{ name: 'plugs out', minutes: 30 }],
      tests: [0, 1].map(at => ({
        name: `${at}`,
        minutes: 5,
        needs: [0],
        outcomes: 2,
        chances: Float64Array.of(0.9, 0.1, 0.1, 0.9),
      })),
    })
    expect(planNext(problem, firstState(problem)).tests[0]?.minutes).toBe(35)
    const open = planNext(problem, firstState(problem, 1))
    expect(open.tests[0]?.minutes).toBe(5)
    expect(open.asAdvised).toBeLessThan(planNext(problem, firstState(problem)).asAdvised)
  })
  it('sees the wet test behind a dry one that tells nothing by itself', () => {
    const base = two({ minutes: 5, right: 0.5 }, [300, 300])
    const wet = {
      name: 'wet',
      minutes: 5,
      needs: [],
      follows: 0,
      outcomes: 2,
      chances: Float64Array.of(1, 0, 0, 1),
    }
    const problem = planningProblem({ ...base, tests: [...base.tests, wet] })
    const step = planNext(problem, firstState(problem))
    expect(step.tests.map(({ test }) => test)).toEqual([0])
    expect(step.advice).toEqual({ kind: 'test', test: 0 })
    expect(step.tests[0]?.minutesSaved).toBeCloseTo(450 - 310, 9)
  })
  it('orders repairs by chance a minute: the cheapest order of one fault (Kadane & Simon 1977)', () => {
    const problem = planningProblem({
      hypotheses: [0.5, 0.3, 0.2].map((chance, at) => ({
        name: `${at}`,
        chance,
        after: [0, 1, 2].map(repair => (repair === at ? fixed : at)),
        leaveMinutes: 10_000,
      })),
      repairs: [100, 20, 30].map((minutes, at) => ({ name: `${at}`, minutes, needs: [] })),
      tests: [],
      setUps: [],
    })
    // Chance a minute 0.005, 0.015, 0.0067: second, third, first.
    const plan = repairPlan(problem, firstState(problem))
    expect(plan.first).toBe(1)
    expect(plan.minutes).toBeCloseTo(20 + 0.7 * 30 + 0.5 * 100, 9)
  })
})

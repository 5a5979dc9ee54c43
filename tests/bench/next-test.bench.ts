// The next-test planner against the exact optimum and against other ways of working, on problems small enough to solve:
// expected minutes until mended, followed exactly through every outcome, and 2,000 drawn engines as a check of that. The shop
// case's chances and minutes are made up (see shop-case.ts): the table judges the planner, not the trade. PLUGTRAY_BENCH=short
// takes a few problems of each kind.
import { expect, it } from 'vitest'
import { planNext } from '../../shared/diagnosis/next-test/plan-next.ts'
import { firstState } from '../../shared/diagnosis/next-test/plan-state.ts'
import type { PlanningProblem } from '../../shared/diagnosis/next-test/planning-problem.ts'
import { disturbed } from '../../shared/diagnosis/next-test/testing/disturbed.ts'
import { exactOptimum } from '../../shared/diagnosis/next-test/testing/exact-optimum.ts'
import {
  fixedOrder,
  likeliestPart,
  lookingAhead,
  planner,
  repairsOnly,
} from '../../shared/diagnosis/next-test/testing/policies.ts'
import {
  type Policy,
  type PolicyCost,
  policyCost,
} from '../../shared/diagnosis/next-test/testing/policy-cost.ts'
import { randomProblem } from '../../shared/diagnosis/next-test/testing/random-problem.ts'
import { shopProblem, wholeCase } from '../../shared/diagnosis/next-test/testing/shop-case.ts'
import { oneFaultOnly, simpleBayes } from '../../shared/diagnosis/next-test/testing/simpler-models.ts'
import { workOn } from '../../shared/diagnosis/next-test/testing/simulate.ts'
import { randomFrom } from '../../shared/inference/testing/random-network.ts'

const short = process.env['PLUGTRAY_BENCH'] === 'short'

type Ways = Record<string, (problem: PlanningProblem, seed: number) => Policy>
const fixedOrderName = 'tests in fixed order to 90 %, then repairs'
const ways: Ways = {
  planner,
  'planner, probabilities off by 0.5': (problem, seed) => planner(disturbed(problem, seed, 0.5)),
  'planner, minutes off by 0.5 as well': (problem, seed) => planner(disturbed(problem, seed, 0.5, 0.5)),
  'planner on simple Bayes': problem => planner(simpleBayes(problem)),
  'planner on one fault only': problem => planner(oneFaultOnly(problem)),
  'one step ahead': problem => lookingAhead(problem, 1),
  [fixedOrderName]: problem => fixedOrder(problem, 0.9),
  'all tests, then repairs': problem => fixedOrder(problem, 2),
  'repairs only, best chance a minute': repairsOnly,
  'likeliest part first': likeliestPart,
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const high = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length * 0.95)] ?? Number.NaN
const per = (value: number) => `${(100 * value).toFixed(1)} %`

/** What a repair that changes nothing costs beyond its own minutes, where that is priced at all. */
const priced = {
  causes: [0, 1, 2, 3, 4, 5, 6],
  tests: [0, 2, 3, 4, 6],
  pairs: false,
  wrongRepairMinutes: 240,
}
const twoFaults = { causes: [0, 1, 2, 4, 5], tests: [0, 2, 3, 4], pairs: true, wrongRepairMinutes: 0 }

it.each([
  ['shop case: 8 causes, 7 tests', short ? 1 : 5, (seed: number) => shopProblem(seed, wholeCase)],
  [
    'shop case: 7 causes, 5 tests, a wrong repair costs 240 minutes more',
    short ? 2 : 12,
    (seed: number) => shopProblem(seed, priced),
  ],
  [
    'shop case: 5 causes, 3 pairs at once, 4 tests',
    short ? 2 : 24,
    (seed: number) => shopProblem(seed, twoFaults),
  ],
  [
    'random: 5 causes, 5 tests',
    short ? 40 : 200,
    (seed: number) => randomProblem(seed, { causes: 5, tests: 5 }),
  ],
  [
    'random: 5 causes, 2 pairs at once, 4 tests',
    short ? 40 : 200,
    (seed: number) => randomProblem(seed, { causes: 5, tests: 4, pairs: 2 }),
  ],
])('%s', (name, count, problemOf) => {
  const problems = Array.from({ length: count }, (_, at) => problemOf(at + 1))
  const optima = problems.map(problem => exactOptimum(problem).minutes)
  const costs = Object.fromEntries(
    Object.entries(ways).map(([way, policyOf]) => [
      way,
      problems.map((problem, at) => policyCost(problem, policyOf(problem, 5_000 + at))),
    ]),
  )
  const fixedMinutes = mean((costs[fixedOrderName] ?? []).map(({ minutes }) => minutes))
  const rows = Object.entries(costs).map(([way, all]) => rowOf(way, all, optima, fixedMinutes))
  console.log(`${name}, ${count} problems; optimum ${mean(optima).toFixed(0)} minutes`)
  console.table(Object.fromEntries(rows))
  const planned = costs['planner'] ?? []
  const random = randomFrom(7)
  const drawn = Math.ceil(2_000 / count)
  const engines = problems.flatMap(problem => {
    const policy = planner(problem)
    const known = new Map<string, ReturnType<Policy['next']>>()
    // The same belief gets the same advice: asked once.
    const next: Policy['next'] = state => {
      const key = `${state.open} ${state.done.join()} ${state.belief.join()}`
      const before = known.get(key) ?? policy.next(state)
      known.set(key, before)
      return before
    }
    return Array.from({ length: short ? 50 : drawn }, () => workOn(problem, { ...policy, next }, random))
  })
  const minutes = engines.map(engine => engine.minutes)
  const spread = Math.sqrt(mean(minutes.map(each => (each - mean(minutes)) ** 2)) / minutes.length)
  const expected = mean(planned.map(each => each.minutes))
  console.log(
    `${engines.length} drawn engines: ${mean(minutes).toFixed(0)} minutes (standard error ${spread.toFixed(0)}), expected ${expected.toFixed(0)}; ` +
      `${mean(engines.map(each => each.tests)).toFixed(1)} tests and ${mean(engines.map(each => each.repairs)).toFixed(2)} repairs each; ` +
      `first repair right ${per(mean(engines.map(each => (each.wrongRepairs === 0 ? 1 : 0))))}`,
  )
  expect(engines.every(engine => engine.mended)).toBe(true)
  expect(Math.min(...planned.map((each, at) => each.minutes / (optima[at] ?? 1)))).toBeGreaterThan(1 - 1e-9)
})

function rowOf(way: string, all: readonly PolicyCost[], optima: readonly number[], fixedMinutes: number) {
  const ratios = all.map(({ minutes }, at) => minutes / (optima[at] ?? 1))
  const total = (key: keyof PolicyCost) => mean(all.map(each => each[key]))
  const row = {
    'mean / optimum': mean(ratios).toFixed(4),
    'p95 / optimum': high(ratios).toFixed(4),
    'share of saving': ((fixedMinutes - total('minutes')) / (fixedMinutes - mean(optima))).toFixed(3),
    'wrong of all repairs': per(total('wrongRepairs') / total('repairs')),
    'leading cause right': per(total('leadingRight')),
    'of the ceiling': (total('leadingRight') / total('ceiling')).toFixed(3),
  }
  return [way, row] as const
}

it('ranks all next tests of a problem of the size of a V8', () => {
  const times = Array.from({ length: short ? 5 : 20 }, (_, at) => {
    const problem = randomProblem(at + 1, { causes: 24, tests: 60, pairs: 16 })
    const begun = performance.now()
    planNext(problem, firstState(problem))
    return performance.now() - begun
  })
  const one = randomProblem(1, { causes: 24, tests: 60, pairs: 16 })
  const begun = performance.now()
  lookingAhead(one, 1).next(firstState(one))
  const single = performance.now() - begun
  console.log(
    `60 tests, 40 hypotheses: ${mean(times).toFixed(0)} ms, slowest ${Math.max(...times).toFixed(0)} ms; one step alone ${single.toFixed(0)} ms (ratio ${(mean(times) / single).toFixed(1)})`,
  )
  expect(times.length).toBeGreaterThan(0)
})

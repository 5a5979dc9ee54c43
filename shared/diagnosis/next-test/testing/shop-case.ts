// A made-up case at the size of a real decision: one cylinder does not pull; eight causes, seven tests in the order in which
// they are commonly written down. Chances and minutes are our own guesses at common practice, for judging the planner only;
// no diagnosis uses them. Every problem moves them at random. Cranking may be slow, which makes every gauge of a cylinder read
// low at once: tests then err together.
import { randomFrom } from '../../../inference/testing/random-network.ts'
import { type Hypothesis, type PlanningProblem, fixed, planningProblem } from '../planning-problem.ts'
import { moved, normalFrom } from './disturbed.ts'

type Cause = { name: string; share: number; minutes: number; needs: readonly number[] }

const setUps = [
  { name: 'plugs out', minutes: 30 },
  { name: 'vacuum gauge on', minutes: 6 },
  { name: 'fuel gauge on', minutes: 15 },
  { name: 'head off', minutes: 240 },
]

/** Repair minutes take in the part at its price in shop minutes. */
const causes: readonly Cause[] = [
  { name: 'plug', share: 0.26, minutes: 25, needs: [0] },
  { name: 'coil or lead', share: 0.2, minutes: 80, needs: [] },
  { name: 'injector', share: 0.13, minutes: 170, needs: [] },
  { name: 'intake leak', share: 0.11, minutes: 90, needs: [] },
  { name: 'valve', share: 0.1, minutes: 480, needs: [0, 3] },
  { name: 'rings', share: 0.08, minutes: 900, needs: [0, 3] },
  { name: 'head gasket', share: 0.07, minutes: 300, needs: [0, 3] },
  { name: 'fuel pressure', share: 0.05, minutes: 180, needs: [2] },
]

type Row = readonly number[]
type Test = {
  name: string
  minutes: number
  needs: readonly number[]
  rows: Record<string, Row>
  other: Row
  slow?: Row
}

/** Rows: chances of the outcomes as listed in the comment; `slow`: a mechanical test's row at slow cranking, whatever is wrong. */
const tests: readonly Test[] = [
  // steady, low, drops regularly
  {
    name: 'vacuum',
    minutes: 8,
    needs: [1],
    rows: {
      valve: [0.1, 0.15, 0.75],
      rings: [0.3, 0.55, 0.15],
      'head gasket': [0.2, 0.15, 0.65],
      'intake leak': [0.15, 0.75, 0.1],
      plug: [0.5, 0.1, 0.4],
      'coil or lead': [0.5, 0.1, 0.4],
    },
    other: [0.65, 0.15, 0.2],
  },
  // no drop, drop as the others
  {
    name: 'balance',
    minutes: 12,
    needs: [],
    rows: { 'fuel pressure': [0.3, 0.7], 'intake leak': [0.55, 0.45] },
    other: [0.88, 0.12],
  },
  // good, low, none
  {
    name: 'compression',
    minutes: 12,
    needs: [0],
    rows: { valve: [0.05, 0.45, 0.5], rings: [0.1, 0.8, 0.1], 'head gasket': [0.12, 0.63, 0.25] },
    other: [0.94, 0.05, 0.01],
    slow: [0.1, 0.85, 0.05],
  },
  // small, at the valve, at the crankcase, into the coolant
  {
    name: 'leak-down',
    minutes: 25,
    needs: [0],
    rows: {
      valve: [0.05, 0.88, 0.05, 0.02],
      rings: [0.08, 0.05, 0.85, 0.02],
      'head gasket': [0.15, 0.05, 0.1, 0.7],
    },
    other: [0.93, 0.03, 0.03, 0.01],
  },
  // moves with the coil, moves with the plug, weak spark, all well
  {
    name: 'ignition: spark, then swaps',
    minutes: 25,
    needs: [],
    rows: { 'coil or lead': [0.9, 0.01, 0.05, 0.04], plug: [0.02, 0.85, 0.05, 0.08] },
    other: [0.01, 0.02, 0.02, 0.95],
  },
  // low flow in this one, low pressure, good
  {
    name: 'fuel',
    minutes: 20,
    needs: [2],
    rows: { injector: [0.9, 0.03, 0.07], 'fuel pressure': [0.03, 0.93, 0.04] },
    other: [0.02, 0.02, 0.96],
  },
  // oil or carbon, fuel-wet, pale, worn or damaged, normal
  {
    name: 'plugs read',
    minutes: 6,
    needs: [0],
    rows: {
      plug: [0.08, 0.12, 0.01, 0.76, 0.03],
      'coil or lead': [0.06, 0.8, 0.01, 0.05, 0.08],
      injector: [0.02, 0.25, 0.6, 0.05, 0.08],
      'intake leak': [0.01, 0.02, 0.82, 0.03, 0.12],
      valve: [0.2, 0.3, 0.05, 0.05, 0.4],
      rings: [0.85, 0.05, 0.01, 0.04, 0.05],
      'head gasket': [0.1, 0.2, 0.05, 0.05, 0.6],
      'fuel pressure': [0.02, 0.03, 0.75, 0.05, 0.15],
    },
    other: [0.03, 0.04, 0.03, 0.05, 0.85],
  },
]

const slowCranking = 0.08

/** Two faults at once, as likely as this share of the rarer one alone. */
const together: readonly (readonly [string, string])[] = [
  ['plug', 'rings'],
  ['plug', 'coil or lead'],
  ['valve', 'injector'],
]
const shareTogether = 0.25

/** Which causes and tests, by number, and whether two faults at once can be; each seed moves every number somewhat. */
export type ShopCase = {
  causes: readonly number[]
  tests: readonly number[]
  pairs: boolean
  wrongRepairMinutes: number
}

export const wholeCase: ShopCase = {
  causes: causes.map((_, at) => at),
  tests: tests.map((_, at) => at),
  pairs: false,
  wrongRepairMinutes: 0,
}

/** One engine's problem: shares moved by sd 1 in logs (each shop and complaint differs), tests by 0.3, minutes by 0.3. */
export function shopProblem(
  seed: number,
  { causes: which, tests: whichTests, pairs, wrongRepairMinutes }: ShopCase,
): PlanningProblem {
  const random = randomFrom(seed)
  const normal = normalFrom(random)
  const chosen = which.flatMap(at => causes[at] ?? [])
  const names = chosen.map(({ name }) => name)
  const sets = [
    ...chosen.map(({ name, share }) => ({ faults: [name], share: share * Math.exp(normal()) })),
    ...(pairs ? together : [])
      .filter(pair => pair.every(name => names.includes(name)))
      .map(pair => ({
        faults: [...pair],
        share:
          shareTogether *
          Math.min(...pair.map(name => chosen.find(cause => cause.name === name)?.share ?? 0)),
      })),
  ]
  const total = sets.reduce((sum, { share }) => sum + share, 0)
  const cranking = [false, true]
  const states = cranking.flatMap(slow => sets.map(set => ({ ...set, slow })))
  const indexOf = (faults: readonly string[], slow: boolean) =>
    faults.length === 0
      ? fixed
      : states.findIndex(state => state.slow === slow && state.faults.join() === faults.join())
  const hypotheses = states.map(
    ({ faults, share, slow }): Hypothesis => ({
      name: `${faults.join(' and ')}${slow ? ', cranks slowly' : ''}`,
      chance: (share / total) * (slow ? slowCranking : 1 - slowCranking),
      after: names.map(name =>
        indexOf(
          faults.filter(fault => fault !== name),
          slow,
        ),
      ),
      leaveMinutes: 20_000,
    }),
  )
  const planned = whichTests
    .flatMap(at => tests[at] ?? [])
    .map(test => {
      const rowOf = new Map(
        [...names, 'other'].map(name => [name, moved(test.rows[name] ?? test.other, 0.3, normal)]),
      )
      const other = rowOf.get('other') ?? test.other
      const chances = states.flatMap(({ faults, slow }) =>
        slow && test.slow
          ? [...test.slow]
          : rowTogether(
              faults.map(fault => rowOf.get(fault) ?? other),
              other,
            ),
      )
      return {
        name: test.name,
        minutes: test.minutes * Math.exp(0.3 * normal()),
        needs: test.needs,
        outcomes: test.other.length,
        chances: Float64Array.from(chances),
      }
    })
  const repairs = chosen.map(({ name, minutes, needs }) => ({
    name,
    minutes: minutes * Math.exp(0.3 * normal()),
    needs,
  }))
  return planningProblem({ hypotheses, repairs, tests: planned, setUps, wrongRepairMinutes })
}

/** Two faults at once: the row that differs most from an engine without either shows. */
function rowTogether(rows: readonly Row[], other: Row): Row {
  const distance = (row: Row) => row.reduce((sum, chance, at) => sum + Math.abs(chance - (other[at] ?? 0)), 0)
  return rows.reduce((most, row) => (distance(row) > distance(most) ? row : most), rows[0] ?? other)
}

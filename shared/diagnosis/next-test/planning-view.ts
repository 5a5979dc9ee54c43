// What the planner needs to know of a diagnosis, and the planning problem made of it.
import {
  type Hypothesis,
  type PlannedTest,
  type PlanningProblem,
  fixed,
  planningProblem,
} from './planning-problem.ts'
import type { ShopTimes } from './shop-time.ts'

/** A cause, of one cylinder or (without one) of the engine. */
export type Fault = { cause: string; cylinder?: number }

/** One way in which all that is known could have come about; no faults: nothing is wrong. */
export type Explanation = { faults: readonly Fault[]; chance: number }

/**
 * A test that could be made next. `chances[e]`: chance of each outcome under explanation e. `follows`: a test (of the same
 * cylinder) that has to be made before it. `again`: it has been made before.
 */
export type OfferedTest = {
  test: string
  cylinder?: number
  chances: readonly (readonly number[])[]
  follows?: string
  again?: boolean
}

export type PlanningView = {
  explanations: readonly Explanation[]
  tests: readonly OfferedTest[]
  /** Set-ups that are open already. */
  open: readonly string[]
  /** Plugs of the whole engine, for set-ups priced by the plug. */
  plugs: number
}

/** The problem with the faults that its repairs mend, in the order of its repairs, and the mask of what is open. */
export type ViewedProblem = { problem: PlanningProblem; faults: readonly Fault[]; open: number }

export const faultKey = ({ cause, cylinder }: Fault): string =>
  cylinder === undefined ? cause : `${cause} ${cylinder}`

/**
 * Lays a view out for the planner. Explanations are closed under repair first: what is left of two faults when one is mended
 * is an explanation too, though perhaps with no chance of its own.
 */
export function problemOf(view: PlanningView, times: ShopTimes): ViewedProblem {
  const faults = [
    ...new Map(
      view.explanations.flatMap(each => each.faults).map(fault => [faultKey(fault), fault]),
    ).values(),
  ]
  const setUps = Object.entries(times.setUps)
  const numbers = new Map(setUps.map(([name], at) => [name, at]))
  const needs = (names: readonly string[]) => names.flatMap(name => numbers.get(name) ?? [])
  const closed = closure(view.explanations)
  const indexOf = new Map(closed.map(({ explanation }, at) => [setKey(explanation.faults), at]))
  const hypotheses = closed.map(({ explanation }): Hypothesis => {
    const { faults: own, chance } = explanation
    return {
      name: setKey(own),
      chance,
      after: faults.map(fault => {
        const left = own.filter(each => faultKey(each) !== faultKey(fault))
        return left.length === 0 && own.length > 0 ? fixed : (indexOf.get(setKey(left)) ?? fixed)
      }),
      leaveMinutes: own.length === 0 ? 0 : times.comebackMinutes,
    }
  })
  const tests = view.tests.map(({ test, cylinder, chances, follows }): PlannedTest => {
    const time = times.tests[test] ?? { minutes: 15, bother: 0, needs: [] }
    const before = view.tests.findIndex(each => each.test === follows && each.cylinder === cylinder)
    return {
      name: test,
      minutes: time.minutes + time.bother,
      needs: needs(time.needs),
      outcomes: chances[0]?.length ?? 1,
      chances: Float64Array.from(closed.flatMap(({ like }) => chances[like] ?? [])),
      ...(before < 0 ? {} : { follows: before }),
    }
  })
  const repairs = faults.map(({ cause }) => {
    const repair = times.repairs[cause] ?? { minutes: 120, needs: [] }
    return { name: cause, minutes: repair.minutes, needs: needs(repair.needs) }
  })
  const problem = planningProblem({
    hypotheses,
    repairs,
    tests,
    setUps: setUps.map(([name, { minutes, eachPlug }]) => ({
      name,
      minutes: minutes + (eachPlug ?? 0) * view.plugs,
    })),
    wrongRepairMinutes: times.wrongRepairMinutes,
  })
  return { problem, faults, open: needs(view.open).reduce((mask, at) => mask | (1 << at), 0) }
}

/** Order-free name of a set of faults. */
const setKey = (faults: readonly Fault[]): string => faults.map(faultKey).sort().join(' + ')

/**
 * Explanations and what repairs can leave of them. `like`: the explanation whose outcomes a left-over one is taken to show;
 * the planner looks only a few steps ahead, and the diagnosis is asked again after every real repair.
 */
function closure(explanations: readonly Explanation[]): { explanation: Explanation; like: number }[] {
  const all = explanations.map((explanation, like) => ({ explanation, like }))
  const known = new Map(all.map(({ explanation }, at) => [setKey(explanation.faults), at]))
  // Grows while it is walked: what is left of three faults is two, of which again one is left.
  for (const { explanation, like } of all) {
    if (explanation.faults.length < 2) continue
    for (const fault of explanation.faults) {
      const left = explanation.faults.filter(each => each !== fault)
      const key = setKey(left)
      if (known.has(key)) continue
      known.set(key, all.length)
      all.push({ explanation: { faults: left, chance: 0 }, like })
    }
  }
  return all
}

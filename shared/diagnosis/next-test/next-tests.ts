// The next tests and the advice as the product shows them: cylinders of one test together, each with a plain why; and either a
// test, or the repair with what would prove it, or nothing.
import type { Action } from './look-ahead.ts'
import { type RankedTest, planNext } from './plan-next.ts'
import { firstState } from './plan-state.ts'
import { type Fault, type PlanningView, type ViewedProblem, problemOf } from './planning-view.ts'
import type { ShopTimes } from './shop-time.ts'
import { bitsTogether } from './test-bits.ts'
import { type NameOf, listed, whyText } from './why.ts'

/** `cylinders`: empty for a test of the whole engine. `bits` about what has to be mended; `minutesSaved` net, by the best of them. */
export type NextTest = {
  test: string
  cylinders: number[]
  bits: number
  minutes: number
  minutesSaved: number
  why: string
}
export type Advice = { kind: 'test' | 'repair' | 'none'; text: string }
export type NextTests = { nextTests: NextTest[]; advice: Advice }

/** As many as are shown; further ones tell less or cost more. */
const mostShown = 5

/** Ranks what could be tested next and says whether to. `nameOf` words a cause. */
export function nextTests(view: PlanningView, times: ShopTimes, nameOf: NameOf): NextTests {
  const viewed = problemOf(view, times)
  const state = firstState(viewed.problem, viewed.open)
  if (!(state.total > 0)) return { nextTests: [], advice: nothingToDo }
  const step = planNext(viewed.problem, state)
  const first = step.advice.kind === 'test' ? step.advice.test : -1
  const inOrder = step.tests.toSorted((a, b) => Number(b.test === first) - Number(a.test === first))
  const groups = new Map<string, RankedTest[]>()
  for (const one of inOrder) {
    if (one.minutesSaved <= 0 && one.bits <= leastBits) continue
    const kind = kindOf(view, one.test)
    groups.set(kind, [...(groups.get(kind) ?? []), one])
  }
  const shown = [...groups.values()]
    .slice(0, mostShown)
    .map(group => grouped(group, view, viewed, times, nameOf))
  return { nextTests: shown, advice: adviceOf(step.advice, shown, viewed, times, nameOf) }
}

const nothingToDo: Advice = {
  kind: 'none',
  text: 'Nothing is known yet that a test or a repair could be chosen by.',
}

/** A test that would tell less is not listed. */
const leastBits = 0.005

const kindOf = (view: PlanningView, test: number): string => {
  const offered = view.tests[test]
  return `${offered?.test}${offered?.again ? ' again' : ''}`
}

/** One kind of test over the cylinders where it pays, or over the one where it comes closest. */
function grouped(
  group: readonly RankedTest[],
  view: PlanningView,
  viewed: ViewedProblem,
  times: ShopTimes,
  nameOf: NameOf,
): NextTest {
  const paying = group.filter(one => one.minutesSaved > 0)
  const members = paying.length > 0 ? paying : group.slice(0, 1)
  const numbers = members.map(({ test }) => test)
  const [best] = members
  const offered = view.tests[best?.test ?? 0]
  const open = viewed.problem.opening((viewed.problem.testNeeds[best?.test ?? 0] ?? 0) & ~viewed.open)
  const each = times.tests[offered?.test ?? '']?.minutes ?? 0
  return {
    test: kindOf(view, best?.test ?? 0),
    cylinders: numbers.flatMap(test => view.tests[test]?.cylinder ?? []).sort((a, b) => a - b),
    bits: bitsTogether(viewed.problem, firstState(viewed.problem, viewed.open), numbers),
    minutes: open + each * members.length,
    minutesSaved: best?.minutesSaved ?? 0,
    why: whyText(view.explanations, offered?.chances ?? [], nameOf) ?? 'tells little by itself',
  }
}

function adviceOf(
  action: Action,
  shown: readonly NextTest[],
  { faults }: ViewedProblem,
  times: ShopTimes,
  nameOf: NameOf,
): Advice {
  const [next] = shown
  if (action.kind === 'test' && next) {
    const where = next.cylinders.length > 0 ? ` on ${next.cylinders.join(', ')}` : ''
    const text = `Next: ${next.test}${where}, about ${Math.round(next.minutes)} minutes: ${next.why}.`
    return { kind: 'test', text }
  }
  const fault = action.kind === 'repair' ? faults[action.repair] : undefined
  if (!fault)
    return { kind: 'none', text: 'No test and no repair would pay: nothing found points to a fault.' }
  return { kind: 'repair', text: repairText(fault, times, nameOf, shown.length > 0) }
}

function repairText(fault: Fault, times: ShopTimes, nameOf: NameOf, testsLeft: boolean): string {
  const repair = times.repairs[fault.cause]
  const reason = testsLeft
    ? 'Another test would cost more than it saves. '
    : 'No test is left that would tell more. '
  const action = repair
    ? `${repair.action}${fault.cylinder === undefined ? '' : ` on ${fault.cylinder}`}`
    : `Repair ${listed([fault], nameOf)}`
  return `${reason}${action}; what would prove it: ${repair?.proof ?? 'repeat the test that failed, as it was made before'}.`
}

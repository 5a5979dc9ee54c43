// How much the answer to a question would tell, on average, about chosen variables: mutual information in bits, given the
// evidence so far. Source: Shannon 1948; its use for choosing tests, Good & Card 1971 (from memory).
import { isDistributionTable } from './check-network.ts'
import { joint, numbersOf } from './posterior.ts'
import { type Answer, failed, found } from './problem.ts'
import type { Posterior } from './propagate.ts'

/** A test that is no variable of the network: P(outcome | scope), the values of [...scope, outcome], outcome fastest. */
export type WouldBeTest = { scope: readonly string[]; outcomes: number; values: ArrayLike<number> }

/**
 * Bits that learning `variable` would tell about `targets` together. 0 where nothing can be learnt. Problems: 'unknown
 * variable', 'duplicate name' where the variable is among the targets, 'too large', 'stale posterior'.
 */
export function expectedInformation(
  posterior: Posterior,
  variable: string,
  targets: readonly string[],
): Answer<number> {
  const both = joint(posterior, [...targets, variable])
  if (!both.ok) return both
  const states = posterior.compiled.cards[posterior.compiled.numberOf.get(variable) ?? 0] ?? 1
  return found(mutualInformation(both.value, states))
}

/** The same for a test that is no variable of the network. Further problem: 'bad table'. */
export function expectedInformationOfTest(
  posterior: Posterior,
  test: WouldBeTest,
  targets: readonly string[],
): Answer<number> {
  const scope = numbersOf(posterior, test.scope)
  if (!scope.ok) return scope
  const { numberOf, cards } = posterior.compiled
  const statesOf = (name: string) => cards[numberOf.get(name) ?? -1] ?? 1
  const size = test.scope.reduce((cells, name) => cells * statesOf(name), 1)
  if (!isDistributionTable(test.values, size, test.outcomes)) {
    return failed('bad table', 'test', `needs ${size} rows of ${test.outcomes} outcomes that sum to 1`)
  }
  const others = test.scope.filter(name => !targets.includes(name))
  const names = [...targets, ...others]
  const belief = joint(posterior, names)
  if (!belief.ok) return belief
  const restCells = others.reduce((cells, name) => cells * statesOf(name), 1)
  const rowOf = rowFinder(test.scope, names, statesOf)
  const both = new Float64Array((belief.value.length / restCells) * test.outcomes)
  for (let cell = 0; cell < belief.value.length; cell += 1) {
    const share = belief.value[cell] ?? 0
    if (share === 0) continue
    const into = Math.floor(cell / restCells) * test.outcomes
    const row = rowOf(cell) * test.outcomes
    for (let outcome = 0; outcome < test.outcomes; outcome += 1) {
      both[into + outcome] = (both[into + outcome] ?? 0) + share * (test.values[row + outcome] ?? 0)
    }
  }
  return found(mutualInformation(both, test.outcomes))
}

/** Which row of a table over `scope` a cell of the table over `names` meets. */
function rowFinder(scope: readonly string[], names: readonly string[], statesOf: (name: string) => number) {
  const parts = scope.map((name, at) => ({
    divisor: names.slice(names.indexOf(name) + 1).reduce((cells, each) => cells * statesOf(each), 1),
    states: statesOf(name),
    stride: scope.slice(at + 1).reduce((cells, each) => cells * statesOf(each), 1),
  }))
  return (cell: number): number =>
    parts.reduce(
      (row, { divisor, states, stride }) => row + (Math.floor(cell / divisor) % states) * stride,
      0,
    )
}

/** Mutual information in bits of a joint table with rows of `width`: between which row and which column. */
export function mutualInformation(both: Float64Array, width: number): number {
  const columns = new Float64Array(width)
  const rows = new Float64Array(both.length / width)
  both.forEach((value, at) => {
    columns[at % width] = (columns[at % width] ?? 0) + value
    const row = Math.floor(at / width)
    rows[row] = (rows[row] ?? 0) + value
  })
  let bits = 0
  both.forEach((value, at) => {
    if (value > 0)
      bits += value * Math.log2(value / ((rows[Math.floor(at / width)] ?? 1) * (columns[at % width] ?? 1)))
  })
  return Math.max(bits, 0)
}

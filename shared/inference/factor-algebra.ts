// Products and sums of whole tables, where structure is made ready and for joints across cliques.
import { type Factor, type FactorShape, sizeOf } from './factor.ts'
import { multiplyTable, setTable, sumTable, tableMap } from './table-kernels.ts'

/** Product of the factors over `shape`, whose scope holds all of theirs. */
export function product(factors: readonly Factor[], shape: FactorShape): Factor {
  const values = new Float64Array(sizeOf(shape.cards))
  const [first, ...others] = factors
  if (first) setTable(values, first.values, tableMap(shape, first), 1)
  else values.fill(1)
  for (const factor of others) multiplyTable(values, factor.values, tableMap(shape, factor), 1)
  return { ...shape, values }
}

/** Sums out every variable that is not in `kept`; the result has the order of `kept`. */
export function sumOnto(factor: Factor, kept: readonly number[]): Factor {
  const shape = {
    scope: kept,
    cards: kept.map(variable => factor.cards[factor.scope.indexOf(variable)] ?? 1),
  }
  const values = new Float64Array(sizeOf(shape.cards))
  sumTable(values, factor.values, tableMap(factor, shape))
  return { ...shape, values }
}

/** Union of scopes in order of first appearance, with the numbers of states. */
export function unionOf(shapes: readonly FactorShape[]): FactorShape {
  const cardOf = new Map<number, number>()
  for (const shape of shapes) {
    shape.scope.forEach((variable, at) => cardOf.set(variable, shape.cards[at] ?? 1))
  }
  return { scope: [...cardOf.keys()], cards: [...cardOf.values()] }
}

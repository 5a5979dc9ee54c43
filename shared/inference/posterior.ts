// What can be read off a posterior: marginals of single variables and joints of a few.
import { product, sumOnto, unionOf } from './factor-algebra.ts'
import { type Factor, type FactorShape, sizeOf } from './factor.ts'
import { type Answer, failed, found } from './problem.ts'
import type { Posterior } from './propagate.ts'
import { multiplyInto, scaleAll, sumColumns, sumTable, tableMap } from './table-kernels.ts'
import { settle } from './workspace.ts'

/** Largest joint table that is worked out: 2^24 doubles are 128 MiB. */
const mostJointCells = 2 ** 24

/** P(variable | evidence), one number a state. Problems: 'unknown variable', 'stale posterior'. */
export function marginal(posterior: Posterior, name: string): Answer<Float64Array> {
  const numbers = numbersOf(posterior, [name])
  if (!numbers.ok) return numbers
  return found(marginalOf(posterior, numbers.value[0] ?? 0))
}

/** P(variable | evidence) of every variable of the network, by name. Problem: 'stale posterior'. */
export function allMarginals(posterior: Posterior): Answer<ReadonlyMap<string, Float64Array>> {
  const stale = numbersOf(posterior, [])
  if (!stale.ok) return stale
  const { numberOf } = posterior.compiled
  return found(new Map([...numberOf].map(([name, number]) => [name, marginalOf(posterior, number)])))
}

/**
 * P(names | evidence), flat, the last name fastest. Cheap where one factor, table or slot has them all in its scope; else the
 * cliques between them are joined. Problems: 'unknown variable', 'too large', 'stale posterior'.
 */
export function joint(posterior: Posterior, names: readonly string[]): Answer<Float64Array> {
  const numbers = numbersOf(posterior, names)
  if (!numbers.ok) return numbers
  const scope = numbers.value
  const { tree, cards } = posterior.compiled
  const shape = { scope, cards: scope.map(variable => cards[variable] ?? 1) }
  if (sizeOf(shape.cards) > mostJointCells) {
    return failed('too large', names.join(', '), `their joint would have ${sizeOf(shape.cards)} cells`)
  }
  if (scope.length === 0) return found(Float64Array.of(1))
  const at = Math.min(...scope.map(variable => tree.cliqueOf[variable] ?? 0))
  const clique = tree.cliques[at]
  const work = posterior.work.cliques[at]
  if (clique && work && scope.every(variable => clique.scope.includes(variable))) {
    const values = new Float64Array(sizeOf(shape.cards))
    sumTable(values, settle(work), tableMap(clique, shape))
    return found(normalised(values))
  }
  return acrossCliques(posterior, shape)
}

/** The numbers of the variables named, or what is wrong with asking for them. */
export function numbersOf(posterior: Posterior, names: readonly string[]): Answer<number[]> {
  if (posterior.run !== posterior.work.run) {
    return failed('stale posterior', 'workspace', 'has been used for a later run')
  }
  const { numberOf } = posterior.compiled
  const unknown = names.find(name => !numberOf.has(name))
  if (unknown !== undefined) return failed('unknown variable', unknown, 'is asked for but not in the network')
  if (new Set(names).size < names.length) {
    return failed('duplicate name', names.join(', '), 'a variable is asked for twice')
  }
  return found(names.map(name => numberOf.get(name) ?? 0))
}

function marginalOf(posterior: Posterior, variable: number): Float64Array {
  const { work, compiled } = posterior
  const sums = new Float64Array(compiled.cards[variable] ?? 1)
  const clique = work.cliques[compiled.tree.cliqueOf[variable] ?? 0]
  if (clique) {
    sumColumns(sums, clique.view, clique.weights)
    multiplyInto(sums, clique.columns)
  }
  return normalised(sums)
}

function normalised(values: Float64Array): Float64Array {
  let sum = 0
  for (const value of values) sum += value
  scaleAll(values, 1 / sum)
  return values
}

/**
 * Joins the cliques from each variable asked for up to the root. The posterior is the product of P(own | separator) over the
 * cliques, so only those above a variable asked for matter; what is not asked for is summed out on the way up.
 */
function acrossCliques(posterior: Posterior, shape: FactorShape): Answer<Float64Array> {
  const { compiled } = posterior
  const wanted = new Set(shape.scope)
  const waiting = new Map<number, Factor[]>()
  const needed = new Set<number>()
  for (const variable of shape.scope) {
    let at: number | null = compiled.tree.cliqueOf[variable] ?? 0
    while (at !== null && !needed.has(at)) {
      needed.add(at)
      at = compiled.tree.cliques[at]?.parent ?? null
    }
  }
  let whole: Factor[] = []
  for (const at of [...needed].sort((a, b) => a - b)) {
    const clique = compiled.tree.cliques[at]
    if (!clique) continue
    const own = { scope: clique.scope, cards: clique.cards, values: conditional(posterior, at) }
    const parts = [own, ...(waiting.get(at) ?? [])]
    const union = unionOf(parts)
    if (sizeOf(union.cards) > mostJointCells) {
      return failed('too large', 'joint', `joining the cliques would need ${sizeOf(union.cards)} cells`)
    }
    const kept = union.scope.filter(variable => variable !== clique.own || wanted.has(variable))
    const summed = sumOnto(product(parts, union), kept)
    if (clique.parent === null) whole = [...whole, summed]
    else waiting.set(clique.parent, [...(waiting.get(clique.parent) ?? []), summed])
  }
  const all = product(whole, unionOf(whole))
  return found(normalised(sumOnto(all, shape.scope).values))
}

/** P(own | separator, evidence) over the clique's scope; 0 in rows that cannot be. */
function conditional(posterior: Posterior, at: number): Float64Array {
  const clique = posterior.work.cliques[at]
  const columns = clique?.columns ?? new Float64Array(1)
  const table = Float64Array.from(clique?.view ?? columns)
  for (let row = 0; row < table.length; row += columns.length) {
    const cells = table.subarray(row, row + columns.length)
    multiplyInto(cells, columns)
    const sum = cells.reduce((total, value) => total + value, 0)
    // Below this the quotient would overflow; such a row has no share in the posterior.
    if (sum > 1e-300) scaleAll(cells, 1 / sum)
  }
  return table
}

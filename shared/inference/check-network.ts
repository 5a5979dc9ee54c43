// Checks a network before it is compiled: names, sizes, tables that are distributions, no cycle. The first fault is reported.
import type { Network, NoisyMax, NoisyOr, Table } from './network.ts'
import { type InferenceProblem, failed } from './problem.ts'
import { isLikelihood, largest } from './table-kernels.ts'

/** How far a row may be from 1: room for rounded literature tables would hide mistakes, so only rounding of doubles. */
const rowTolerance = 1e-9

type Fault = InferenceProblem | null
type States = ReadonlyMap<string, number>

/** The first fault of a network, or null. */
export function checkNetwork(network: Network): Fault {
  const states = new Map<string, number>()
  for (const { name, states: count } of network.variables) {
    if (states.has(name)) return failed('duplicate name', name, 'two variables have this name').problem
    if (!Number.isInteger(count) || count < 1) {
      return failed('bad variable', name, `needs a whole number of states, at least 1; has ${count}`).problem
    }
    states.set(name, count)
  }
  return (
    firstFault(network.tables ?? [], table => checkTable(table, states)) ??
    firstFault(network.noisyOrs ?? [], noisy => checkNoisyOr(noisy, states)) ??
    firstFault(network.noisyMaxes ?? [], noisy => checkNoisyMax(noisy, states)) ??
    checkScopes(network, states) ??
    checkChildren(network)
  )
}

function firstFault<T>(items: readonly T[], check: (item: T) => Fault): Fault {
  for (const item of items) {
    const fault = check(item)
    if (fault) return fault
  }
  return null
}

function checkNames(names: readonly string[], states: States, of: string): Fault {
  const unknown = names.find(name => !states.has(name))
  if (unknown !== undefined) return failed('unknown variable', unknown, `named by ${of}`).problem
  if (new Set(names).size < names.length) return failed('bad table', of, 'names a variable twice').problem
  return null
}

const cells = (names: readonly string[], states: States): number =>
  names.reduce((size, name) => size * (states.get(name) ?? 1), 1)

function checkTable({ child, parents, values }: Table, states: States): Fault {
  const of = `the table of ${child}`
  return (
    checkNames([...parents, child], states, of) ??
    checkRows(values, cells(parents, states), child, states, of)
  )
}

/** Whether a flat table has `rows` rows of `width` that are distributions. */
export function isDistributionTable(values: ArrayLike<number>, rows: number, width: number): boolean {
  const table = Float64Array.from(values)
  if (table.length !== rows * width || !isLikelihood(table)) return false
  for (let row = 0; row < rows; row += 1) if (!isOne(rowSum(table, row, width))) return false
  return true
}

const isOne = (sum: number): boolean => Math.abs(sum - 1) <= rowTolerance

function rowSum(values: ArrayLike<number>, row: number, width: number): number {
  let sum = 0
  for (let at = 0; at < width; at += 1) sum += values[row * width + at] ?? 0
  return sum
}

function checkRows(
  values: ArrayLike<number>,
  rows: number,
  child: string,
  states: States,
  of: string,
): Fault {
  const width = states.get(child) ?? 1
  if (values.length !== rows * width) {
    return failed('bad table', child, `${of} needs ${rows * width} values, has ${values.length}`).problem
  }
  if (!isLikelihood(Float64Array.from(values))) {
    return failed('bad table', child, `${of} holds a value that is negative or no finite number`).problem
  }
  for (let row = 0; row < rows; row += 1) {
    const sum = rowSum(values, row, width)
    if (!isOne(sum)) {
      return failed('bad table', child, `row ${row} of ${of} sums to ${sum}, not to 1`).problem
    }
  }
  return null
}

function checkNoisyOr({ child, leak, causes }: NoisyOr, states: States): Fault {
  const of = `the noisy-OR of ${child}`
  const names = checkNames([...causes.map(cause => cause.parent), child], states, of)
  if (names) return names
  if (states.get(child) !== 2)
    return failed('bad table', child, `${of} needs a child with two states`).problem
  if (!isChance(leak))
    return failed('bad table', child, `the leak of ${of} is ${leak}, not a probability`).problem
  return firstFault(causes, ({ parent, chance }) => {
    const column = typeof chance === 'number' ? [0, chance] : chance
    if (column.length !== states.get(parent)) {
      return failed('bad table', child, `${of} needs one chance for each state of ${parent}`).problem
    }
    const wrong = column.find(each => !isChance(each))
    if (wrong === undefined) return null
    return failed('bad table', child, `the chance of ${parent} in ${of} is ${wrong}, not a probability`)
      .problem
  })
}

const isChance = (value: number): boolean => value >= 0 && value <= 1

function checkNoisyMax({ child, leak, causes }: NoisyMax, states: States): Fault {
  const of = `the noisy-MAX of ${child}`
  return (
    checkNames([...causes.map(cause => cause.parent), child], states, of) ??
    checkRows(leak, 1, child, states, `the leak of ${of}`) ??
    firstFault(causes, ({ parent, effect }) =>
      checkRows(effect, states.get(parent) ?? 1, child, states, `the column of ${parent} in ${of}`),
    )
  )
}

function checkScopes({ factors = [], slots = [] }: Network, states: States): Fault {
  const seen = new Set<string>()
  const named = firstFault([...factors, ...slots], ({ name, scope }) => {
    if (seen.has(name)) return failed('duplicate name', name, 'two factors or slots have this name').problem
    seen.add(name)
    return checkNames(scope, states, name)
  })
  if (named) return named
  return firstFault(factors, ({ name, scope, values }) => {
    const size = cells(scope, states)
    if (values.length !== size) {
      return failed('bad table', name, `needs ${size} values, has ${values.length}`).problem
    }
    const table = Float64Array.from(values)
    if (isLikelihood(table) && largest(table) > 0) return null
    return failed('bad table', name, 'needs non-negative numbers that are not all 0').problem
  })
}

/** Each variable the child of one table at most, or in the scope of a factor; and no variable its own ancestor. */
function checkChildren(network: Network): Fault {
  const parentsOf = new Map<string, readonly string[]>()
  const relations = [
    ...(network.tables ?? []).map(({ child, parents }) => ({ child, parents })),
    ...[...(network.noisyOrs ?? []), ...(network.noisyMaxes ?? [])].map(({ child, causes }) => ({
      child,
      parents: causes.map(cause => cause.parent),
    })),
  ]
  for (const { child, parents } of relations) {
    if (parentsOf.has(child)) return failed('duplicate name', child, 'has two tables').problem
    parentsOf.set(child, parents)
  }
  const inFactors = new Set((network.factors ?? []).flatMap(factor => factor.scope))
  const bare = network.variables.find(({ name }) => !parentsOf.has(name) && !inFactors.has(name))
  if (bare) return failed('no table', bare.name, 'has no table and is in no factor').problem
  return findCycle(parentsOf)
}

/** Takes away variables without parents left until none is left; what cannot be taken away is on or behind a cycle. */
function findCycle(parentsOf: ReadonlyMap<string, readonly string[]>): Fault {
  const left = new Map(parentsOf)
  for (let before = -1; before !== left.size; ) {
    before = left.size
    for (const [child, parents] of left) {
      if (!parents.some(parent => left.has(parent))) left.delete(child)
    }
  }
  const [on] = left.keys()
  return on === undefined ? null : failed('cycle', on, 'is among its own ancestors').problem
}

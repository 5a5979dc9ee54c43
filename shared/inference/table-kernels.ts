// The inner loops of a run: multiply a small table into a big one, sum a big one onto a small one. Where the small table's
// cell lies for each cell of the big one is worked out once (TableMap), as runs of constant step, so that a loop does no
// index arithmetic a cell. Indexing is asserted here: every index comes from a map made for these very tables.
import { type FactorShape, sizeOf, stridesWithin } from './factor.ts'

/** Cell `o * run + k` of the big table meets cell `base[o] + k * step` of the small one. */
export type TableMap = { base: Int32Array; run: number; step: number }

/** The map from every cell of a table over `big` to the cell of a table over `small`, whose variables are all in `big`. */
export function tableMap(big: FactorShape, small: FactorShape): TableMap {
  const strides = stridesWithin(big.scope, small)
  let first = big.scope.length - 1
  const step = strides[first] ?? 0
  let run = big.cards[first] ?? 1
  while (first > 0 && strides[first - 1] === step * run) {
    first -= 1
    run *= big.cards[first] ?? 1
  }
  const outer = big.cards.slice(0, Math.max(first, 0))
  const base = new Int32Array(sizeOf(outer))
  let filled = 1
  outer.forEach((card, at) => {
    // Grows the list one variable at a time: each known offset followed by its neighbours along this variable.
    for (let cell = filled - 1; cell >= 0; cell -= 1) {
      const offset = base[cell] as number
      for (let state = card - 1; state >= 0; state -= 1) {
        base[cell * card + state] = offset + state * (strides[at] ?? 0)
      }
    }
    filled *= card
  })
  return { base, run, step }
}

/** big = small * scale. */
export function setTable(big: Float64Array, small: Float64Array, map: TableMap, scale: number): void {
  const { base, run, step } = map
  let cell = 0
  for (let outer = 0; outer < base.length; outer += 1) {
    let at = base[outer] as number
    const end = cell + run
    if (step === 0) {
      big.fill((small[at] as number) * scale, cell, end)
      cell = end
    } else {
      for (; cell < end; cell += 1, at += step) big[cell] = (small[at] as number) * scale
    }
  }
}

/** big *= small * scale. */
export function multiplyTable(big: Float64Array, small: Float64Array, map: TableMap, scale: number): void {
  const { base, run, step } = map
  let cell = 0
  for (let outer = 0; outer < base.length; outer += 1) {
    let at = base[outer] as number
    const end = cell + run
    if (step === 0) {
      const value = (small[at] as number) * scale
      if (value === 1) cell = end
      else for (; cell < end; cell += 1) big[cell] = (big[cell] as number) * value
    } else {
      for (; cell < end; cell += 1, at += step) {
        big[cell] = (big[cell] as number) * (small[at] as number) * scale
      }
    }
  }
}

/** small = sum of the cells of big that meet it. */
export function sumTable(small: Float64Array, big: Float64Array, map: TableMap): void {
  const { base, run, step } = map
  small.fill(0)
  let cell = 0
  for (let outer = 0; outer < base.length; outer += 1) {
    let at = base[outer] as number
    const end = cell + run
    if (step === 0) {
      let sum = 0
      for (; cell < end; cell += 1) sum += big[cell] as number
      small[at] = (small[at] as number) + sum
    } else {
      for (; cell < end; cell += 1, at += step) small[at] = (small[at] as number) + (big[cell] as number)
    }
  }
}

/** rows[r] = sum over k of table[r][k] * columns[k]. */
export function sumRows(rows: Float64Array, table: Float64Array, columns: Float64Array): void {
  const width = columns.length
  const inPairs = width - (width % 2)
  let cell = 0
  for (let row = 0; row < rows.length; row += 1) {
    let even = 0
    let odd = 0
    // Two sums at once: an addition need not wait for the one before it.
    for (let at = 0; at < inPairs; at += 2, cell += 2) {
      even += (table[cell] as number) * (columns[at] as number)
      odd += (table[cell + 1] as number) * (columns[at + 1] as number)
    }
    if (inPairs < width) {
      even += (table[cell] as number) * (columns[inPairs] as number)
      cell += 1
    }
    rows[row] = even + odd
  }
}

/** rows[r] = largest over k of table[r][k] * columns[k]. */
export function maxRows(rows: Float64Array, table: Float64Array, columns: Float64Array): void {
  let cell = 0
  for (let row = 0; row < rows.length; row += 1) {
    let most = 0
    for (let at = 0; at < columns.length; at += 1, cell += 1) {
      const value = (table[cell] as number) * (columns[at] as number)
      if (value > most) most = value
    }
    rows[row] = most
  }
}

/** sums[k] = sum over rows r of weights[r] * table[r][k]. */
export function sumColumns(sums: Float64Array, table: Float64Array, weights: Float64Array): void {
  const width = sums.length
  sums.fill(0)
  const inFours = weights.length - (weights.length % 4)
  // Four rows at once: a quarter of the reads and writes of the sums.
  for (let row = 0; row < inFours; row += 4) {
    const a = weights[row] as number
    const b = weights[row + 1] as number
    const c = weights[row + 2] as number
    const d = weights[row + 3] as number
    if (a === 0 && b === 0 && c === 0 && d === 0) continue
    let cell = row * width
    for (let at = 0; at < width; at += 1, cell += 1) {
      sums[at] =
        (sums[at] as number) +
        a * (table[cell] as number) +
        b * (table[cell + width] as number) +
        c * (table[cell + 2 * width] as number) +
        d * (table[cell + 3 * width] as number)
    }
  }
  for (let row = inFours; row < weights.length; row += 1) {
    const weight = weights[row] as number
    let cell = row * width
    for (let at = 0; at < width; at += 1, cell += 1) {
      sums[at] = (sums[at] as number) + weight * (table[cell] as number)
    }
  }
}

/** values[i] *= factors[i]. */
export function multiplyInto(values: Float64Array, factors: Float64Array): void {
  for (let at = 0; at < values.length; at += 1) values[at] = (values[at] as number) * (factors[at] as number)
}

/** values *= scale. */
export function scaleAll(values: Float64Array, scale: number): void {
  for (let at = 0; at < values.length; at += 1) values[at] = (values[at] as number) * scale
}

/** values[i] = values[i] / divisors[i], where 0 / 0 is 0: what cannot be stays so. */
export function divideBy(values: Float64Array, divisors: Float64Array): void {
  for (let at = 0; at < values.length; at += 1) {
    const divisor = divisors[at] as number
    values[at] = divisor === 0 ? 0 : (values[at] as number) / divisor
  }
}

/** Largest cell of a table that has been checked. */
export function largest(values: Float64Array): number {
  let most = 0
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at] as number
    if (value > most) most = value
  }
  return most
}

/** Whether every cell is a finite number, not below 0. */
export function isLikelihood(values: Float64Array): boolean {
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at] as number
    if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) return false
  }
  return true
}

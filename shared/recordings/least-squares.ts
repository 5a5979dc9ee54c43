// Weighted least squares by the normal equations, for a handful of unknowns over many samples.
import { CholeskyDecomposition, Matrix } from 'ml-matrix'

/** Normal equations gathered row by row. */
export type Normal = {
  size: number
  square: Float64Array
  right: Float64Array
  energy: number
  count: number
}

export const emptyNormal = (size: number): Normal => ({
  size,
  square: new Float64Array(size * size),
  right: new Float64Array(size),
  energy: 0,
  count: 0,
})

/** Adds one row: what was measured, with its weight, for these columns. */
export function addRow(normal: Normal, columns: Float64Array, measured: number, weight: number): void {
  const { size, square, right } = normal
  for (let row = 0; row < size; row += 1) {
    const scaled = (columns[row] ?? 0) * weight
    if (scaled === 0) continue
    right[row] = (right[row] ?? 0) + scaled * measured
    for (let column = 0; column <= row; column += 1) {
      const at = row * size + column
      square[at] = (square[at] ?? 0) + scaled * (columns[column] ?? 0)
    }
  }
  normal.energy += weight * measured * measured
  normal.count += weight
}

/** The same rows with the unknowns from `first` on held near zero, the harder the greater `pull`; infinity leaves them out. */
export function hold(normal: Normal, first: number, pull: number): Normal {
  const { size } = normal
  const square = Float64Array.from(normal.square)
  const right = Float64Array.from(normal.right)
  for (let row = first; row < size; row += 1) {
    if (Number.isFinite(pull)) square[row * size + row] = (square[row * size + row] ?? 0) + pull
    else {
      square.fill(0, row * size, row * size + row)
      square[row * size + row] = 1
      right[row] = 0
    }
  }
  return { ...normal, square, right }
}

/** Unknowns and what is left over (weighted sum of squares); null where the columns do not tell the unknowns apart. */
export function solve(normal: Normal): { unknowns: Float64Array; left: number } | null {
  const { size, square, right } = normal
  const matrix = Matrix.zeros(size, size)
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      const value = square[row * size + column] ?? 0
      matrix.set(row, column, value)
      matrix.set(column, row, value)
    }
    // A trace of damping keeps the factors positive where rounding would not.
    matrix.set(row, row, matrix.get(row, row) * (1 + 1e-9) + 1e-12)
  }
  const factors = new CholeskyDecomposition(matrix)
  if (!factors.isPositiveDefinite()) return null
  const unknowns = Float64Array.from(factors.solve(Matrix.columnVector(right)).to1DArray())
  const explained = unknowns.reduce((sum, value, at) => sum + value * (right[at] ?? 0), 0)
  return { unknowns, left: Math.max(0, normal.energy - explained) }
}

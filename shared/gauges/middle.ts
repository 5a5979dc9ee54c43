// Middle and range of repeated readings: neither depends on the order they were taken in.

/** Middle value; of an even count the mean of the two in the middle. NaN for none. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const half = Math.floor(sorted.length / 2)
  const upper = sorted[half] ?? Number.NaN
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? Number.NaN)) / 2
}

/** Greatest less least; 0 for one value or none. */
export const rangeOf = (values: readonly number[]): number =>
  values.length > 1 ? tidy(Math.max(...values) - Math.min(...values)) : 0

/** Takes away the last digits that a change of unit leaves behind, so that no verdict hangs on them. */
export const tidy = (value: number): number => Math.round(value * 1e6) / 1e6

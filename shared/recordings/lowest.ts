// Which place in the firing sequence is lowest, where that can be said.
import type { PositionValue } from './recording.ts'

/** The lowest value, if its interval lies clear below those of the rest; null where none stands out. */
export function lowestOne(values: readonly PositionValue[]): PositionValue | null {
  const [lowest, next] = values.toSorted((a, b) => a.percent - b.percent)
  if (!lowest || !next || lowest.plusMinus === undefined) return null
  return lowest.percent + lowest.plusMinus < next.percent - (next.plusMinus ?? 0) ? lowest : null
}

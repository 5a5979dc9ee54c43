// Which place in the firing sequence is lowest, where that can be said.
import type { PositionValue } from './recording.ts'

/** Sound cylinders differ by a few points: a smaller gap to the next one is not worth a word. Common practice. */
const leastGap = 5

/** The lowest value, if it stands clear of the next by both intervals and by enough to matter; null where none does. */
export function lowestOne(values: readonly PositionValue[]): PositionValue | null {
  const [lowest, next] = values.toSorted((a, b) => a.percent - b.percent)
  if (!lowest || !next || lowest.plusMinus === undefined) return null
  const gap = next.percent - lowest.percent
  return gap > Math.max(leastGap, Math.hypot(lowest.plusMinus, next.plusMinus ?? 0)) ? lowest : null
}

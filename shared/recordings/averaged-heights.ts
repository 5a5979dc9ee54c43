// From heights cycle by cycle to one share for each hump with its interval: battery sag and gain cancel.
import { halfWidth } from './interval.ts'

/** Level of a smooth course through the cycle means: the battery sags, the starter warms. */
function course(means: number[]): (cycle: number) => number {
  const count = means.length
  const mean = means.reduce((sum, one) => sum + one, 0) / count
  if (count < 3) return () => mean
  const middle = (count - 1) / 2
  let [tilt, square] = [0, 0]
  for (const [at, one] of means.entries()) {
    tilt += one * (at - middle)
    square += (at - middle) ** 2
  }
  const slope = tilt / square
  return cycle => Math.max(0.2 * mean, mean + slope * (cycle - middle))
}

export type Shares = { shares: number[]; plusMinus: number[] | null }

/**
 * Height of each hump as a share of the mean hump, averaged over cycles.
 * @param cycles for each kept cycle one height a hump
 * @param relativeTo turns mean shares into the percentages that are shown
 */
export function averagedHeights(cycles: Float64Array[], relativeTo: (shares: number[]) => number[]): Shares {
  const humps = cycles[0]?.length ?? 0
  const means = cycles.map(heights => heights.reduce((sum, one) => sum + one, 0) / humps)
  const level = course(means)
  const scaled = cycles.map((heights, cycle) =>
    Array.from(heights, (height, at) => height / level(cycle + (at - (humps - 1) / 2) / humps)),
  )
  const meanOf = (some: number[][]) =>
    Array.from({ length: humps }, (_, at) => some.reduce((sum, one) => sum + (one[at] ?? 0), 0) / some.length)
  const shares = relativeTo(meanOf(scaled))
  if (scaled.length < 3) return { shares, plusMinus: null }
  // Leaving out one cycle after the other carries the reference's own uncertainty along.
  const without = scaled.map((_, left) => relativeTo(meanOf(scaled.filter((_, cycle) => cycle !== left))))
  const plusMinus = shares.map((_, at) => {
    const values = without.map(one => one[at] ?? 0)
    const mean = values.reduce((sum, one) => sum + one, 0) / values.length
    const squares = values.reduce((sum, one) => sum + (one - mean) ** 2, 0)
    return halfWidth(Math.sqrt(((values.length - 1) / values.length) * squares), values.length - 1)
  })
  return { shares, plusMinus }
}

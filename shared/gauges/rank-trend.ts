// Does a value fall through a sequence, or is its order chance? Kendall's rank test, one-sided: no shape of the fall is
// assumed and no single reading decides. Source: Kendall, Rank Correlation Methods (exact counts recomputed; the variance
// with ties is from memory).

export type Trend = {
  /** How many readings. */
  count: number
  /** Rising less falling pairs, over all pairs that are not tied in time: -1 falls throughout. */
  tau: number
  /** Chance of falling this much or more if the order meant nothing. */
  chance: number
}

type Point = { at: number; value: number }

/** Independent of the order of `points`; null with fewer than four, or without two times or two values. */
export function fallOf(points: readonly Point[]): Trend | null {
  const count = points.length
  const times = tiesOf(points.map(one => one.at))
  const values = tiesOf(points.map(one => one.value))
  if (count < 4 || times.length === 1 || values.length === 1) return null
  let sum = 0
  for (const [i, a] of points.entries())
    for (const b of points.slice(i + 1)) sum += Math.sign(b.at - a.at) * Math.sign(b.value - a.value)
  const pairs = (count * (count - 1)) / 2 - pairsIn(times)
  const untied = times.length === count && values.length === count
  const chance = untied && count <= 40 ? exactChance(sum, count) : normalChance(sum, count, times, values)
  return { count, tau: sum / pairs, chance }
}

/** Sizes of the groups of equal numbers. */
function tiesOf(numbers: readonly number[]): number[] {
  const sizes = new Map<number, number>()
  for (const one of numbers) sizes.set(one, (sizes.get(one) ?? 0) + 1)
  return [...sizes.values()]
}

const pairsIn = (sizes: readonly number[]): number => sizes.reduce((sum, t) => sum + (t * (t - 1)) / 2, 0)

/** Counts the orders of `count` things by how many pairs stand the wrong way round. */
function exactChance(sum: number, count: number): number {
  let share = [1]
  for (let n = 2; n <= count; n++) {
    const next = Array.from({ length: share.length + n - 1 }, () => 0)
    for (const [i, part] of share.entries())
      for (let more = 0; more < n; more++) next[i + more] = (next[i + more] ?? 0) + part / n
    share = next
  }
  const rising = ((count * (count - 1)) / 2 + sum) / 2
  return share.slice(0, rising + 1).reduce((all, part) => all + part, 0)
}

function normalChance(
  sum: number,
  count: number,
  times: readonly number[],
  values: readonly number[],
): number {
  const by = (sizes: readonly number[], of: (t: number) => number) => sizes.reduce((all, t) => all + of(t), 0)
  const big = (t: number) => t * (t - 1) * (2 * t + 5)
  const three = (t: number) => t * (t - 1) * (t - 2)
  const two = (t: number) => t * (t - 1)
  const variance =
    (big(count) - by(times, big) - by(values, big)) / 18 +
    (by(times, three) * by(values, three)) / (9 * three(count)) +
    (by(times, two) * by(values, two)) / (2 * two(count))
  return belowNormal((sum + 1) / Math.sqrt(variance))
}

/** Standard normal distribution; error below 1e-7. Source: Abramowitz and Stegun 26.2.17 (from memory). */
function belowNormal(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z))
  const poly =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const tail = (poly * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)
  return z < 0 ? tail : 1 - tail
}

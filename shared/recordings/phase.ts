// The phase of a repeating event at every sample: whole numbers stand at the events' middle.
import type { EvenSeries } from './even-series.ts'
import type { RatePath } from './event-rate.ts'

/** Straight lines between given points, level beyond the ends. */
export function between(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number, hint = { at: 0 }): number {
  const last = xs.length - 1
  if (last < 0) return Number.NaN
  if (x <= (xs[0] ?? 0)) return ys[0] ?? 0
  if (x >= (xs[last] ?? 0)) return ys[last] ?? 0
  if (x < (xs[hint.at] ?? 0)) hint.at = 0
  while ((xs[hint.at + 1] ?? 0) < x) hint.at += 1
  const left = xs[hint.at] ?? 0
  const right = xs[hint.at + 1] ?? left
  const share = right > left ? (x - left) / (right - left) : 0
  return (ys[hint.at] ?? 0) + share * ((ys[hint.at + 1] ?? 0) - (ys[hint.at] ?? 0))
}

/** Phase by adding up the rate. */
export function summedPhase(series: EvenSeries, path: RatePath): Float64Array {
  const hint = { at: 0 }
  let phase = 0
  return series.level.map((_, index) => {
    const now = phase
    phase += between(path.time, path.rate, series.start + index * series.step, hint) * series.step
    return now
  })
}

/** First sample of which the phase reaches a value, for rising phases. */
export function sampleAt(phase: Float64Array, value: number): number {
  let [low, high] = [0, phase.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((phase[middle] ?? 0) < value) low = middle + 1
    else high = middle
  }
  return low
}

/** Takes the mean over one cycle (of `events` events) from every sample; near the ends over the first or last cycle. */
export function withoutCycleMean(series: EvenSeries, phase: Float64Array, events: number): Float64Array {
  const { level, weight } = series
  const sums = new Float64Array(level.length + 1)
  const weights = new Float64Array(level.length + 1)
  for (let index = 0; index < level.length; index += 1) {
    sums[index + 1] = (sums[index] ?? 0) + (level[index] ?? 0) * (weight[index] ?? 0)
    weights[index + 1] = (weights[index] ?? 0) + (weight[index] ?? 0)
  }
  const first = phase[0] ?? 0
  const last = phase.at(-1) ?? 0
  let [from, to] = [0, 0]
  return level.map((value, index) => {
    const middle = Math.min(
      Math.max(phase[index] ?? 0, first + events / 2),
      Math.max(first, last - events / 2),
    )
    while (from < index && (phase[from] ?? 0) < middle - events / 2) from += 1
    while (to < level.length && (phase[to] ?? 0) < middle + events / 2) to += 1
    const total = (weights[to] ?? 0) - (weights[from] ?? 0)
    return total > 0 ? value - ((sums[to] ?? 0) - (sums[from] ?? 0)) / total : 0
  })
}

/**
 * Corrects the phase by the angle of the fundamental in windows of two cycles, so that differences between cylinders,
 * which repeat every cycle, do not pull on it.
 */
export function steadiedPhase(series: EvenSeries, rough: Float64Array, events: number): Float64Array {
  let phase = rough
  for (let round = 0; round < 3; round += 1) phase = oneRound(series, phase, events)
  return phase
}

function oneRound(series: EvenSeries, phase: Float64Array, events: number): Float64Array {
  const flat = withoutCycleMean(series, phase, events)
  const first = phase[0] ?? 0
  const last = phase.at(-1) ?? 0
  const half = Math.min(events, (last - first) / 2)
  if (!(half > 0)) return phase
  const centres: number[] = []
  const turns: number[] = []
  let before = 0
  for (let centre = first; centre <= last; centre += Math.max(0.5, events / 8)) {
    let [re, im] = [0, 0]
    const from = sampleAt(phase, centre - half)
    const to = sampleAt(phase, centre + half)
    for (let index = from; index < to; index += 1) {
      const at = phase[index] ?? 0
      const value =
        (flat[index] ?? 0) * (series.weight[index] ?? 0) * (1 + Math.cos((Math.PI * (at - centre)) / half))
      re += value * Math.cos(2 * Math.PI * at)
      im -= value * Math.sin(2 * Math.PI * at)
    }
    let turn = Math.atan2(im, re) / (2 * Math.PI)
    turn -= Math.round(turn - before)
    before = turn
    centres.push(centre)
    turns.push(turn)
  }
  const hint = { at: 0 }
  const moved = phase.map(at => at + between(centres, turns, at, hint))
  // A phase that runs backwards would be a wrong track: keep it rising.
  for (let index = 1; index < moved.length; index += 1) {
    moved[index] = Math.max(moved[index] ?? 0, (moved[index - 1] ?? 0) + 1e-9)
  }
  return moved
}

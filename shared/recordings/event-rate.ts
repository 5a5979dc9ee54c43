// Follows how often a repeating event comes: a short-time spectrum, and the smoothest strong path through it.
import type { EvenSeries } from './even-series.ts'

/** Rate in events a second at the middle of each window. */
export type RatePath = { time: Float64Array; rate: Float64Array }

type EvenLevels = Pick<EvenSeries, 'start' | 'step' | 'level'>

const gridSteps = 72
/** Events in one window: enough to tell rates 10 % apart, few enough to follow a starter that slows down. */
const eventsInWindow = 7
/** Cost of a change of rate between windows, per squared grid step. */
const changeCost = 0.02
/** Common practice: a warm engine is cranked at 150 to 300 rpm; the middle of the range weighs a little more. */
const awayCost = 0.35

/** Samples averaged to about ten a period of the fastest rate. */
function coarser(series: EvenSeries, fastest: number): EvenLevels {
  const factor = Math.max(1, Math.floor(1 / (10 * fastest) / series.step))
  const length = Math.floor(series.level.length / factor)
  const level = new Float64Array(length)
  for (let index = 0; index < length; index += 1) {
    let sum = 0
    for (let part = 0; part < factor; part += 1) sum += series.level[index * factor + part] ?? 0
    level[index] = sum / factor
  }
  const step = series.step * factor
  return { start: series.start + (step - series.step) / 2, step, level }
}

/** Power at each rate of the grid in one window, with its straight line taken away and scaled to the window's own. */
function windowPower(series: EvenLevels, from: number, length: number, rates: Float64Array): Float64Array {
  let [sum, tilt, square] = [0, 0, 0]
  const middle = (length - 1) / 2
  for (let index = 0; index < length; index += 1) {
    const value = series.level[from + index] ?? 0
    sum += value
    tilt += value * (index - middle)
    square += (index - middle) ** 2
  }
  const mean = sum / length
  const slope = square > 0 ? tilt / square : 0
  let energy = 0
  const flat = Float64Array.from({ length }, (_, index) => {
    const value = (series.level[from + index] ?? 0) - mean - slope * (index - middle)
    energy += value * value
    return value * (0.5 - 0.5 * Math.cos((2 * Math.PI * (index + 0.5)) / length))
  })
  return rates.map(rate => {
    const turn = 2 * Math.PI * rate * series.step
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    let [x, y, re, im] = [1, 0, 0, 0]
    for (const value of flat) {
      re += value * x
      im += value * y
      ;[x, y] = [x * c - y * s, x * s + y * c]
    }
    return energy > 0 ? (re * re + im * im) / (energy * length) : 0
  })
}

/** Cheapest path through the windows, by dynamic programming. */
function bestPath(scores: Float64Array[]): number[] {
  const reach = 6
  let total = scores[0] ?? new Float64Array(gridSteps)
  const came: Int16Array[] = []
  for (const score of scores.slice(1)) {
    const next = new Float64Array(gridSteps)
    const from = new Int16Array(gridSteps)
    for (let at = 0; at < gridSteps; at += 1) {
      let best = Number.NEGATIVE_INFINITY
      for (let before = Math.max(0, at - reach); before <= Math.min(gridSteps - 1, at + reach); before += 1) {
        const value = (total[before] ?? 0) - changeCost * (at - before) ** 2
        if (value > best) {
          best = value
          from[at] = before
        }
      }
      next[at] = best + (score[at] ?? 0)
    }
    came.push(from)
    total = next
  }
  let at = total.indexOf(Math.max(...total))
  const path = [at]
  for (const from of came.toReversed()) {
    at = from[at] ?? at
    path.push(at)
  }
  return path.toReversed()
}

/** @param slowest and @param fastest events a second to look between */
export function ratePath(fine: EvenSeries, slowest: number, fastest: number): RatePath {
  const series = coarser(fine, fastest)
  const rates = Float64Array.from({ length: gridSteps }, (_, at) => {
    return slowest * (fastest / slowest) ** (at / (gridSteps - 1))
  })
  const usual = Math.sqrt(slowest * fastest)
  const length = Math.min(series.level.length, Math.max(16, Math.round(eventsInWindow / usual / series.step)))
  const hop = Math.max(1, Math.floor(length / 4))
  const scores: Float64Array[] = []
  const middles: number[] = []
  for (let from = 0; from + length <= series.level.length; from += hop) {
    const power = windowPower(series, from, length, rates)
    scores.push(
      power.map((value, at) => value - awayCost * 0.05 * Math.log((rates[at] ?? usual) / usual) ** 2),
    )
    middles.push(series.start + (from + (length - 1) / 2) * series.step)
  }
  const path = bestPath(scores)
  return {
    time: Float64Array.from(middles),
    rate: Float64Array.from(path, at => rates[at] ?? usual),
  }
}

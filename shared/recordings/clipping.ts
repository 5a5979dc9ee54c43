// Tells an amplifier that ran into its end from a curve that merely has a highest point.
import type { ThinSeries } from './thin-series.ts'

/** A curve's top is flat too: near it, time spent falls off by the square root, to 0.41 in the band below. */
const standsOut = 5
const shortest = 5

/** The level at which the recording is cut off between two bins; infinity where it is not. */
export function clipLevel(series: ThinSeries, from: number, to: number): number {
  const high = series.high.subarray(from, to)
  const top = high.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY)
  const bottom = high.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY)
  const band = 0.01 * (top - bottom)
  if (!(band > 0)) return Number.POSITIVE_INFINITY
  const within = (least: number, most: number) => high.filter(one => one > least && one <= most).length
  const atTop = within(top - 0.02 * band, top)
  const beneath = within(top - 2 * band, top - band)
  return atTop >= shortest && atTop > standsOut * (beneath + 1) ? top - 0.02 * band : Number.POSITIVE_INFINITY
}

// One stretch of a recording on an even time grid, with weight 0 where samples are missing.
import type { ThinSeries } from './thin-series.ts'

export type EvenSeries = {
  start: number
  step: number
  level: Float64Array
  /** 0 where samples are missing. */
  weight: Float64Array
  /** 0 where samples are missing or clipped: what heights are read from. */
  trust: Float64Array
}

/** Half the rate is kept free above the hump harmonics; below 1 kHz the recording's own spacing is taken. */
const finestStep = 0.001

export function usualSpacing(time: Float64Array): number {
  const gaps = Float64Array.from({ length: Math.max(0, time.length - 1) }, (_, index) => {
    return (time[index + 1] ?? 0) - (time[index] ?? 0)
  }).sort()
  return gaps[Math.floor(gaps.length / 2)] ?? finestStep
}

/** Indices `from` up to but not including `to`; gaps longer than three spacings get weight 0. */
export function evenSeries(series: ThinSeries, from: number, to: number, clipLevel: number): EvenSeries {
  const time = series.time.subarray(from, to)
  const start = time[0] ?? 0
  const step = Math.max(finestStep, usualSpacing(time))
  const length = Math.max(1, Math.floor(((time.at(-1) ?? start) - start) / step) + 1)
  const level = new Float64Array(length)
  const weight = new Float64Array(length)
  const trust = new Float64Array(length)
  let at = 0
  for (let index = 0; index < length; index += 1) {
    const now = start + index * step
    while (at + 1 < time.length - 1 && (time[at + 1] ?? 0) <= now) at += 1
    const left = time[at] ?? 0
    const right = time[at + 1] ?? left
    const share = right > left ? Math.min(1, Math.max(0, (now - left) / (right - left))) : 0
    const below = series.level[from + at] ?? 0
    const above = series.level[from + Math.min(at + 1, time.length - 1)] ?? below
    level[index] = below + share * (above - below)
    const clipped =
      (series.high[from + at] ?? 0) >= clipLevel ||
      (series.high[from + Math.min(at + 1, time.length - 1)] ?? 0) >= clipLevel
    weight[index] = right - left > 3 * step ? 0 : 1
    trust[index] = clipped ? 0 : (weight[index] ?? 0)
  }
  return { start, step, level, weight, trust }
}

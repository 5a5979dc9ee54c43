// Finds the pulses of a sync channel and what they say: how many humps a cycle has, and which hump is cylinder 1.
import type { ThinSeries } from './thin-series.ts'

/** Several sparks of one firing, or ringing, count as one pulse; a turn takes 150 ms at 400 rpm. */
const onePulseSeconds = 0.04
const clearOfNoise = 6

/** Seconds of each pulse's first edge; empty where nothing stands clear of the noise. */
export function pulseTimes(series: ThinSeries): number[] {
  const { time, level, high, low } = series
  if (time.length < 10) return []
  const ranked = level.toSorted()
  const middle = ranked[Math.floor(ranked.length / 2)] ?? 0
  const spread = level.map(one => Math.abs(one - middle)).toSorted()[Math.floor(level.length / 2)] ?? 0
  const above = high.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY) - middle
  const below = middle - low.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY)
  const reach = Math.max(above, below)
  if (!(reach > 0) || reach < clearOfNoise * spread) return []
  const up = above >= below
  const away = (index: number) => (up ? (high[index] ?? 0) - middle : middle - (low[index] ?? 0))
  const pulses: number[] = []
  let on = away(0) > 0.5 * reach
  for (let index = 1; index < time.length; index += 1) {
    const now = away(index)
    if (!on && now > 0.5 * reach) {
      on = true
      const at = time[index] ?? 0
      if (at - (pulses.at(-1) ?? Number.NEGATIVE_INFINITY) > onePulseSeconds) pulses.push(at)
    } else if (on && now < 0.3 * reach) on = false
  }
  return pulses
}

export type SyncReading =
  | { kind: 'cycle'; hump: number; doubtful: boolean }
  | { kind: 'turn'; hump: number }
  | { kind: 'other'; humpsBetween: number }
  | { kind: 'none' }

/**
 * @param phases phase of each pulse, in humps from any start
 * @param humpPhases phase within the cycle at which each hump stands, in humps
 */
export function readSync(phases: number[], humpPhases: number[]): SyncReading {
  const humps = humpPhases.length
  const gaps = phases.slice(1).map((phase, at) => phase - (phases[at] ?? 0))
  if (gaps.length === 0) return { kind: 'none' }
  const usual = gaps.toSorted((a, b) => a - b)[Math.floor(gaps.length / 2)] ?? 0
  const nearUsual = gaps.filter(gap => Math.abs(gap - usual) < 0.35).length
  if (nearUsual < 0.6 * gaps.length) return { kind: 'none' }
  const isCycle = Math.abs(usual - humps) < 0.35
  const isTurn = Math.abs(usual - humps / 2) < 0.35 && humps > 1
  if (!isCycle && !isTurn) return { kind: 'other', humpsBetween: Math.round(usual) }
  const period = isCycle ? humps : humps / 2
  // Mean place in the period, taken round the circle.
  const [re, im] = phases.reduce(
    ([x, y], phase) => [
      x + Math.cos((2 * Math.PI * phase) / period),
      y + Math.sin((2 * Math.PI * phase) / period),
    ],
    [0, 0],
  )
  const place = (Math.atan2(im, re) / (2 * Math.PI)) * period
  const away = humpPhases.map(hump => {
    const apart = (hump - place) / period
    return Math.abs(apart - Math.round(apart)) * period
  })
  const nearest = away.indexOf(Math.min(...away))
  return isCycle
    ? { kind: 'cycle', hump: nearest, doubtful: (away[nearest] ?? 0) > 0.38 }
    : { kind: 'turn', hump: nearest }
}

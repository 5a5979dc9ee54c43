// Follows the compression humps through a stretch of cranking and fits their mean cycle.
import {
  type CycleFit,
  evenlySpaced,
  fitCycle,
  fittedLevels,
  type MeanCycle,
  meanCycle,
} from './cycle-fit.ts'
import type { EvenSeries } from './even-series.ts'
import { ratePath, type RatePath } from './event-rate.ts'
import { withoutHum } from './mains-hum.ts'
import { steadiedPhase, summedPhase, withoutCycleMean } from './phase.ts'
import { trackedPhase } from './track-phase.ts'

export type HumpTrack = {
  series: EvenSeries
  /** In humps; a whole cycle is as many as the engine has cylinders. */
  phase: Float64Array
  fit: CycleFit
  /** Every shape tried, best first. */
  fits: CycleFit[]
  otherKind: CycleFit | null
  cycle: MeanCycle
  /** Which of the layout's intervals follows the first hump of a cycle. */
  turn: number
  /** Share of the recording's variance that the repeating cycle explains, white noise left aside, 0 to 1. */
  explained: number
  /** Mains frequency taken out, if any. */
  hum: number | null
}

/** Crank speeds at which starters turn engines, with room on both sides. */
const slowestRpm = 70
const fastestRpm = 450

/** Weaker hum than this share of the humps' own swing does no harm. */
const humShare = 0.03
/** At a common cranking speed nothing better need be looked for. */
const wellExplained = 0.8

/** White noise cannot be told from a signal to the last percent. */
const leastSmooth = 0.03

function explainedShare(series: EvenSeries, flat: Float64Array, phase: Float64Array, fit: CycleFit): number {
  const humps = fit.angles.length
  const levels = fittedLevels(fit, 32 * humps)
  let [left, all] = [0, 0]
  for (let index = 0; index < flat.length; index += 1) {
    const turned = (phase[index] ?? 0) / humps
    const bin = Math.floor((turned - Math.floor(turned)) * levels.length) % levels.length
    const weight = series.weight[index] ?? 0
    left += weight * ((flat[index] ?? 0) - (levels[bin] ?? 0)) ** 2
    all += weight * (flat[index] ?? 0) ** 2
  }
  return all > 0 ? (all - left) / Math.max(leastSmooth * all, all - whiteEnergy(series, flat)) : 0
}

/** Energy of noise without memory, by second differences: humps are far too smooth to show in them. */
function whiteEnergy(series: EvenSeries, flat: Float64Array): number {
  let energy = 0
  for (let index = 1; index + 1 < flat.length; index += 1) {
    const bend = (flat[index - 1] ?? 0) - 2 * (flat[index] ?? 0) + (flat[index + 1] ?? 0)
    energy += ((series.weight[index] ?? 0) * bend * bend) / 6
  }
  return energy
}

/** What the repeating cycle does not explain: hum shows in it, and the humps' own overtones do not. */
function leftOver(track: HumpTrack): Float64Array {
  const { series, phase, fit } = track
  const humps = fit.angles.length
  const levels = fittedLevels(fit, 32 * humps)
  return withoutCycleMean(series, phase, humps).map((value, index) => {
    const turned = (phase[index] ?? 0) / humps
    return value - (levels[Math.floor((turned - Math.floor(turned)) * levels.length) % levels.length] ?? 0)
  })
}

function fitted(series: EvenSeries, phase: Float64Array, intervalsDeg: readonly number[]): HumpTrack | null {
  const flat = withoutCycleMean(series, phase, intervalsDeg.length)
  const cycle = meanCycle(series, flat, phase, intervalsDeg.length)
  const found = fitCycle(cycle, intervalsDeg)
  const fit = found?.fits[0]
  if (!found || !fit) return null
  return {
    series,
    phase,
    cycle,
    fit,
    ...found,
    explained: explainedShare(series, flat, phase, fit),
    hum: null,
  }
}

/** Sharpens the phase by the fit and fits again, as long as that explains more. */
function sharpened(track: HumpTrack, intervalsDeg: readonly number[]): HumpTrack {
  const humps = intervalsDeg.length
  let best = track
  for (let round = 0; round < 2; round += 1) {
    const { series, phase, fit } = best
    const flat = withoutCycleMean(series, phase, humps)
    const levels = fittedLevels(fit, 32 * humps)
    const next = fitted(series, trackedPhase(series, flat, phase, levels, humps), intervalsDeg)
    if (!next || next.explained <= best.explained) break
    best = next
  }
  return best
}

const times = (path: RatePath, factor: number): RatePath => ({
  time: path.time,
  rate: path.rate.map(rate => rate * factor),
})

/**
 * The best track through the stretch, or null where there is no repeating hump to follow. Half and twice the strongest
 * rate are tried too: with few cylinders an overtone can be stronger than the humps' own rate.
 */
export function trackHumps(series: EvenSeries, intervalsDeg: readonly number[]): HumpTrack | null {
  const humps = intervalsDeg.length
  const perRpm = humps / 120
  const path = ratePath(series, slowestRpm * perRpm, fastestRpm * perRpm)
  const seconds = series.level.length * series.step
  const humpSeen = seconds * (path.rate[0] ?? 0)
  if (!(humpSeen > 1)) return null
  let best: HumpTrack | null = null
  for (const factor of humps <= 4 || !evenlySpaced(intervalsDeg) ? [1, 0.5, 2] : [1]) {
    const tried = times(path, factor)
    const rpm = (tried.rate[Math.floor(tried.rate.length / 2)] ?? 0) / perRpm
    if (rpm < slowestRpm * 0.7 || rpm > fastestRpm * 1.5) continue
    const track = fitted(series, steadiedPhase(series, summedPhase(series, tried), humps), intervalsDeg)
    // A slower rate has more freedom to fit; it has to be clearly better.
    if (track && (!best || track.explained > best.explained + (factor < 1 ? 0.05 : 0.02))) {
      best = track
    }
    if (best && best.explained > wellExplained && rpm > 110 && rpm < 320) break
  }
  if (!best) return null
  const clean = withoutHum(best.series, leftOver(best), humShare * Math.sqrt(2 * best.cycle.variance))
  const start = clean.hum === null ? best : fitted(clean.series, best.phase, intervalsDeg)
  return start && { ...sharpened(start, intervalsDeg), hum: clean.hum }
}

// Sharpens the phase by comparing each stretch of the recording with the fitted cycle: uses every harmonic there is.
import type { EvenSeries } from './even-series.ts'
import { between, sampleAt } from './phase.ts'

/**
 * @param levels the fitted cycle, bin by bin
 * @param humps humps in a cycle
 * @returns the phase, moved by a smooth correction (a straight line in each window of two cycles)
 */
export function trackedPhase(
  series: EvenSeries,
  flat: Float64Array,
  phase: Float64Array,
  levels: Float64Array,
  humps: number,
): Float64Array {
  const bins = levels.length
  const first = phase[0] ?? 0
  const last = phase.at(-1) ?? 0
  const half = Math.min(humps, (last - first) / 2)
  if (!(half > 0)) return phase
  const slopes = levels.map((_, bin) => {
    return (((levels[(bin + 1) % bins] ?? 0) - (levels[(bin + bins - 1) % bins] ?? 0)) / 2) * (bins / humps)
  })
  const centres: number[] = []
  const moves: number[] = []
  for (let centre = first; centre <= last; centre += Math.max(0.5, humps / 8)) {
    let [ss, su, suu, rs, ru] = [0, 0, 0, 0, 0]
    const to = sampleAt(phase, centre + half)
    for (let index = sampleAt(phase, centre - half); index < to; index += 1) {
      const at = phase[index] ?? 0
      const turned = at / humps
      const bin = Math.floor((turned - Math.floor(turned)) * bins) % bins
      const away = at - centre
      const weight = (series.weight[index] ?? 0) * (1 + Math.cos((Math.PI * away) / half))
      const slope = slopes[bin] ?? 0
      const left = (flat[index] ?? 0) - (levels[bin] ?? 0)
      ss += weight * slope * slope
      su += weight * slope * slope * away
      suu += weight * slope * slope * away * away
      rs += weight * slope * left
      ru += weight * slope * left * away
    }
    const span = ss * suu - su * su
    if (!(span > 1e-12 * ss * suu)) continue
    const move = (rs * suu - ru * su) / span
    centres.push(centre)
    moves.push(Math.max(-0.15, Math.min(0.15, move)))
  }
  if (centres.length === 0) return phase
  const hint = { at: 0 }
  const moved = phase.map(at => at + between(centres, moves, at, hint))
  for (let index = 1; index < moved.length; index += 1) {
    moved[index] = Math.max(moved[index] ?? 0, (moved[index - 1] ?? 0) + 1e-9)
  }
  return moved
}

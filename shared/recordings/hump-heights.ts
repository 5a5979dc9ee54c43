// The height of every hump, cycle by cycle, and the cycles that can be trusted.
import type { CycleFit } from './cycle-fit.ts'
import type { EvenSeries } from './even-series.ts'
import { humpLevels, levelAt } from './hump-shape.ts'
import { addRow, emptyNormal, solve } from './least-squares.ts'
import { sampleAt } from './phase.ts'

export type CycleHeights = {
  /** Phase at which the cycle begins, in humps. */
  from: number
  /** Height of each hump in the recording's unit; empty where the cycle could not be fitted. */
  heights: Float64Array
  /** Root mean square of what is left over, in the recording's unit. */
  left: number
  kept: boolean
}

const sampleOutlier = 4.5
const fewestWeight = 0.6

function fitCycleSamples(series: EvenSeries, phase: Float64Array, fit: CycleFit, from: number): CycleHeights {
  const humps = fit.angles.length
  const levels = humpLevels(fit.shape)
  const [begin, end] = [sampleAt(phase, from), sampleAt(phase, from + humps)]
  const rows: Float64Array[] = []
  const measured: number[] = []
  for (let index = begin; index < end; index += 1) {
    const degrees = ((phase[index] ?? 0) / humps) * 720
    const row = new Float64Array(humps + 2)
    row[0] = 1
    row[1] = ((phase[index] ?? 0) - from) / humps - 0.5
    let tails = 0
    for (const [at, angle] of fit.angles.entries()) {
      row[at + 2] = levelAt(levels.hump, degrees - angle)
      tails += (fit.tails[at] ?? 0) * levelAt(levels.tail, degrees - angle)
    }
    rows.push(row)
    measured.push((series.level[index] ?? 0) - tails)
  }
  const nothing = { from, heights: new Float64Array(0), left: Number.POSITIVE_INFINITY, kept: false }
  const weights = Float64Array.from(rows, (_, at) => series.trust[begin + at] ?? 0)
  const present = weights.reduce((sum, one) => sum + one, 0)
  if (present < Math.max(2 * humps + 4, fewestWeight * rows.length)) return nothing
  const once = () => {
    const normal = emptyNormal(humps + 2)
    for (const [at, row] of rows.entries()) addRow(normal, row, measured[at] ?? 0, weights[at] ?? 0)
    const found = solve(normal)
    if (!found) return null
    const away = rows.map((row, at) => {
      const model = row.reduce((sum, column, place) => sum + column * (found.unknowns[place] ?? 0), 0)
      return (measured[at] ?? 0) - model
    })
    const kept = away.filter((_, at) => (weights[at] ?? 0) > 0)
    const ranked = Float64Array.from(kept, Math.abs).sort()
    const spread = (ranked[Math.floor(ranked.length / 2)] ?? 0) * 1.4826
    const left = Math.sqrt(kept.reduce((sum, one) => sum + one * one, 0) / Math.max(1, kept.length))
    return { found, away, spread, left }
  }
  const first = once()
  if (!first) return nothing
  let struck = 0
  for (const [at, away] of first.away.entries()) {
    if ((weights[at] ?? 0) === 0 || Math.abs(away) <= sampleOutlier * first.spread) continue
    weights[at] = 0
    struck += 1
  }
  const last = struck > 0 && struck < 0.1 * rows.length ? (once() ?? first) : first
  return { from, heights: last.found.unknowns.slice(2), left: last.left, kept: true }
}

/** Heights of all whole cycles; the ones that fit far worse than the usual are kept out. */
export function cycleHeights(series: EvenSeries, phase: Float64Array, fit: CycleFit): CycleHeights[] {
  const humps = fit.angles.length
  // Cycles are cut in the trough before their first hump.
  const cut = ((fit.angles[0] ?? 0) / 720) * humps - 0.5
  const first = Math.ceil(((phase[0] ?? 0) - cut) / humps) * humps + cut
  const cycles: CycleHeights[] = []
  for (let from = first; from + humps <= (phase.at(-1) ?? 0); from += humps) {
    cycles.push(fitCycleSamples(series, phase, fit, from))
  }
  const fitted = cycles.filter(cycle => cycle.kept)
  const ranked = fitted.map(cycle => cycle.left).sort((a, b) => a - b)
  const usual = ranked[Math.floor((ranked.length - 1) / 2)] ?? 0
  if (fitted.length < 3) return cycles
  return cycles.map(cycle => ({ ...cycle, kept: cycle.kept && cycle.left <= 2 * usual }))
}

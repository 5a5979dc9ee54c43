// After how many humps the pattern of high and low ones comes back: a check of the layout that needs no sync.
import type { EvenSeries } from './even-series.ts'
import { sampleAt } from './phase.ts'

const mostHumps = 12

/** Plain height of each hump: its middle less the troughs beside it, as a share of the heights around it. */
export function plainHeights(series: EvenSeries, phase: Float64Array): number[] {
  const mean = (from: number, to: number) => {
    let [sum, count] = [0, 0]
    for (let index = sampleAt(phase, from); index < sampleAt(phase, to); index += 1) {
      sum += (series.level[index] ?? 0) * (series.weight[index] ?? 0)
      count += series.weight[index] ?? 0
    }
    return count > 0 ? sum / count : Number.NaN
  }
  const heights: number[] = []
  for (let hump = Math.ceil(phase[0] ?? 0) + 1; hump + 1 <= (phase.at(-1) ?? 0); hump += 1) {
    const beside = (mean(hump - 0.62, hump - 0.38) + mean(hump + 0.38, hump + 0.62)) / 2
    heights.push(mean(hump - 0.12, hump + 0.12) - beside)
  }
  return heights
}

/** Share of the differences between humps that a pattern of this length explains, less what chance explains. */
function explained(heights: number[], length: number): number {
  const groups = Array.from({ length }, (_, at) => heights.filter((_, hump) => hump % length === at))
  const free = heights.length - length
  if (free < length) return 0
  const squares = (some: number[]) => {
    const mean = some.reduce((sum, one) => sum + one, 0) / some.length
    return some.reduce((sum, one) => sum + (one - mean) ** 2, 0)
  }
  const total = squares(heights) / (heights.length - 1)
  return total > 0 ? 1 - groups.reduce((sum, group) => sum + squares(group), 0) / free / total : 0
}

/**
 * Length of the repeating pattern where it speaks against a layout with `humps` cylinders: clearly better explained by
 * another length that is no multiple of it. Null where the pattern agrees or is too even to tell.
 */
export function otherPattern(heights: number[], humps: number): number | null {
  const known = heights.filter(Number.isFinite)
  if (known.length < heights.length || known.length < 3 * humps) return null
  const own = explained(known, humps)
  const others = Array.from({ length: mostHumps }, (_, at) => ({
    length: at + 1,
    share: explained(known, at + 1),
  }))
  const best = Math.max(...others.map(one => one.share))
  const shortest = others.find(one => one.share > best - 0.08)
  if (!shortest || best < 0.5 || best < own + 0.25) return null
  return shortest.length % humps === 0 && shortest.length === humps ? null : shortest.length
}

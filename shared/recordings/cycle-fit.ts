// Fits one hump for each cylinder to the mean cycle of a cranking recording, and finds which hump shape fits best.
import { descend } from './descend.ts'
import type { EvenSeries } from './even-series.ts'
import {
  type HumpLevels,
  type HumpShape,
  humpLevels,
  levelAt,
  unusual,
  usualFade,
  usualShape,
} from './hump-shape.ts'
import { addRow, emptyNormal, hold, solve } from './least-squares.ts'

const binsAHump = 32
const cycleDeg = 720

/** No hump is an exact bell: a misfit of this share of the cycle's variance says nothing about the shape. */
const leastMisfit = 0.001

/** Charges give back less than they took by up to about this share of the height: one standard deviation. */
const tailSpread = 0.15

export type MeanCycle = { level: Float64Array; weight: Float64Array; variance: number }

/** Mean level for each angle of the cycle; phase counts humps, a cycle has `humps` of them. */
export function meanCycle(
  series: EvenSeries,
  flat: Float64Array,
  phase: Float64Array,
  humps: number,
): MeanCycle {
  const bins = binsAHump * humps
  const sums = new Float64Array(bins)
  const weight = new Float64Array(bins)
  for (let index = 0; index < flat.length; index += 1) {
    const turned = (phase[index] ?? 0) / humps
    const bin = Math.floor((turned - Math.floor(turned)) * bins) % bins
    const one = series.trust[index] ?? 0
    sums[bin] = (sums[bin] ?? 0) + one * (flat[index] ?? 0)
    weight[bin] = (weight[bin] ?? 0) + one
  }
  const level = sums.map((sum, bin) => ((weight[bin] ?? 0) > 0 ? sum / (weight[bin] ?? 1) : 0))
  const mean = level.reduce((sum, one) => sum + one, 0) / bins
  return { level, weight, variance: level.reduce((sum, one) => sum + (one - mean) ** 2, 0) / bins }
}

export type CycleFit = {
  shape: HumpShape
  /** Crank degrees in the cycle at which each hump stands, in order of time. */
  angles: number[]
  amplitudes: Float64Array
  /** How much less each charge gave back than it took, in the same unit. */
  tails: Float64Array
  /** Squares left over after the fit, per unit of weight. */
  left: number
  /** Less is better: misfit and how far the shape is from the usual one. */
  cost: number
}

/** Fits heights and tails for one shape and one set of angles; null where they cannot be told apart. */
function fitAt(cycle: MeanCycle, levels: HumpLevels, angles: number[], tailed: boolean) {
  const bins = cycle.level.length
  const humps = angles.length
  const columns = tailed ? 2 * humps + 1 : humps + 1
  const normal = emptyNormal(columns)
  const row = new Float64Array(columns)
  for (let bin = 0; bin < bins; bin += 1) {
    const degrees = ((bin + 0.5) / bins) * cycleDeg
    row[0] = 1
    for (const [at, angle] of angles.entries()) {
      row[at + 1] = levelAt(levels.hump, degrees - angle)
      if (tailed) row[at + humps + 1] = levelAt(levels.tail, degrees - angle)
    }
    addRow(normal, row, cycle.level[bin] ?? 0, cycle.weight[bin] ?? 0)
  }
  const plain = solve(tailed ? hold(normal, humps + 1, Number.POSITIVE_INFINITY) : normal)
  if (!plain) return null
  if (!tailed) {
    return {
      amplitudes: plain.unknowns.slice(1),
      tails: new Float64Array(humps),
      left: plain.left / normal.count,
    }
  }
  const height = plain.unknowns.slice(1, humps + 1).reduce((sum, one) => sum + one, 0) / humps
  const noise = plain.left / normal.count + leastMisfit * cycle.variance
  const found = solve(hold(normal, humps + 1, noise / (tailSpread * height) ** 2))
  if (!found) return null
  return {
    amplitudes: found.unknowns.slice(1, humps + 1),
    tails: found.unknowns.slice(humps + 1),
    left: found.left / normal.count,
  }
}

function fitShape(cycle: MeanCycle, shape: HumpShape, angles: number[]): CycleFit | null {
  const strange = unusual(shape)
  if (!Number.isFinite(strange)) return null
  const found = fitAt(cycle, humpLevels(shape), angles, shape.fadePerDeg > 0)
  if (!found) return null
  const samples = angles.length * 8
  const cost = samples * Math.log(found.left + leastMisfit * cycle.variance) + strange
  return { shape, angles, ...found, cost }
}

/** Fits with the shape left free, from a first fit on; with a lag too where the first fit has one. */
function freed(cycle: MeanCycle, start: CycleFit): CycleFit[] {
  const lagging = start.shape.fadePerDeg > 0
  const { widthDeg, lean, power, fadePerDeg } = start.shape
  const begin = [0, widthDeg, lean, power, ...(lagging ? [fadePerDeg] : [])]
  const steps = [5, 4, 0.2, 0.4, ...(lagging ? [0.002] : [])]
  const judge = ([shift = 0, width = widthDeg, leaning = lean, flat = power, fade = 0]: number[]) =>
    fitShape(
      cycle,
      { widthDeg: width, lean: leaning, power: flat, fadePerDeg: lagging ? Math.max(1e-4, fade) : 0 },
      start.angles.map(angle => angle + shift),
    )
  return descend(begin, steps, judge, 120)
}

/** Published intervals are rounded to a tenth of a degree at worst. */
export const evenlySpaced = (intervalsDeg: readonly number[]): boolean =>
  intervalsDeg.every(interval => Math.abs(interval - cycleDeg / intervalsDeg.length) < 0.5)

/** Angles of the humps for each way the unequal intervals can lie; one way for an engine that fires evenly. */
function waysToLie(intervalsDeg: readonly number[]): number[][] {
  const humps = intervalsDeg.length
  const even = evenlySpaced(intervalsDeg)
  return Array.from({ length: even ? 1 : humps }, (_, turn) => {
    let angle = 0
    const angles = Array.from({ length: humps }, (_, at) => {
      const now = angle
      angle += intervalsDeg[(at + turn) % humps] ?? 0
      return now
    })
    // The phase follows the mean rate: unequal humps stand around its whole numbers.
    const ahead = angles.reduce((sum, one, at) => sum + one - (at * cycleDeg) / humps, 0) / humps
    return angles.map(one => one - ahead)
  })
}

export type FittedCycle = {
  /** Every shape tried of the kind that was chosen, best first. */
  fits: CycleFit[]
  /** The best fit of the other kind, where that fits clearly better or worse: how much hangs on the kind. */
  otherKind: CycleFit | null
  /** Which of the intervals follows the first hump. */
  turn: number
}

/** A plain bell that leaves more than this share of the variance is doubted. */
const doubtShare = 0.01
/** From this many degrees between humps on, what each leaves behind can be told apart from the next. */
const apartDeg = 130

/**
 * Fits the mean cycle with plain humps, and where these leave something over with humps that lag and leave tails.
 * @param intervalsDeg crank degrees from each hump to the next, summing to 720
 */
export function fitCycle(cycle: MeanCycle, intervalsDeg: readonly number[]): FittedCycle | null {
  const reach = (0.3 * cycleDeg) / intervalsDeg.length
  const starts = waysToLie(intervalsDeg).map(way =>
    lowestCost(
      [-3, -2, -1, 0, 1, 2, 3].map(at =>
        fitShape(
          cycle,
          usualShape,
          way.map(angle => angle + (at / 3) * reach),
        ),
      ),
    ),
  )
  const start = lowestCost(starts)
  if (!start) return null
  const turn = starts.indexOf(start)
  const plain = freed(cycle, start).toSorted(byCost)
  const best = plain[0]
  if (!best) return null
  const lagStart = fitShape(cycle, { ...best.shape, fadePerDeg: usualFade }, best.angles)
  if (!lagStart || best.left < doubtShare * cycle.variance) return { fits: plain, otherKind: null, turn }
  const lagging = freed(cycle, lagStart).toSorted(byCost)
  const other = lagging[0]
  if (!other || other.left > 0.6 * best.left) return { fits: plain, otherKind: null, turn }
  return cycleDeg / intervalsDeg.length > apartDeg
    ? { fits: lagging, otherKind: best, turn }
    : { fits: plain, otherKind: other, turn }
}

const byCost = (a: CycleFit, b: CycleFit) => a.cost - b.cost

const lowestCost = (fits: (CycleFit | null)[]): CycleFit | null =>
  fits.reduce((best, fit) => (fit && (!best || fit.cost < best.cost) ? fit : best), null)

/** The same cycle fitted with the bell wider or narrower: how much hangs on the shape. */
export const fitWider = (cycle: MeanCycle, fit: CycleFit, degrees: number): CycleFit | null =>
  fitShape(cycle, { ...fit.shape, widthDeg: fit.shape.widthDeg + degrees }, fit.angles)

/** Level of the fitted cycle, without its mean, at each of the cycle's bins. */
export function fittedLevels(fit: CycleFit, bins: number): Float64Array {
  const levels = humpLevels(fit.shape)
  const out = Float64Array.from({ length: bins }, (_, bin) => {
    const degrees = ((bin + 0.5) / bins) * cycleDeg
    return fit.angles.reduce(
      (sum, angle, at) =>
        sum +
        (fit.amplitudes[at] ?? 0) * levelAt(levels.hump, degrees - angle) +
        (fit.tails[at] ?? 0) * levelAt(levels.tail, degrees - angle),
      0,
    )
  })
  const mean = out.reduce((sum, value) => sum + value, 0) / bins
  return out.map(value => value - mean)
}

// Drift of the baseline over a round of cut-outs, as the engine warms or idle control creeps: a robust line through what
// the engine did before each cut and after it was restored, or the word that no line fits.
import { median, tidy } from './middle.ts'

/** One reading with all cylinders working. `at` counts cut-outs: 2.67 is two thirds from the third cut to the fourth. */
export type Baseline = { at: number; value: number }

export type Drift =
  | {
      kind: 'line'
      /** Change from one cut-out to the next. */
      perCut: number
      baselineAt: (at: number) => number
      /** Half width of the interval of that baseline. */
      errorAt: (at: number) => number
      /** Half width that a single reading strays from the line; never less than its reading error. */
      wander: number
      /** It strays much further than it can be misread: the idle is not steady. */
      hunts: boolean
      /** Single baselines far off a line that holds for the others: misread, or a gust. */
      strays: number
    }
  | { kind: 'none'; because: 'too few' | 'no line'; wander: number }

/** A line through three points hardly shows whether there is one. */
export const fewestForDrift = 4
/** One step among fewer bends half of them, and would pass for hunting. */
const fewestToTellHunting = 8
/** Above this the line is drawn through pairs half a round apart instead of through all pairs. */
const allPairsUpTo = 150
/** Scatter of a normal spread from the middle of its absolute values. */
const sigmaOf = (values: readonly number[]): number => 1.4826 * median(values.map(Math.abs))
/** The middle of residuals is a less certain level than their mean: for a normal spread by sqrt(pi / 2). */
const middleForMean = 1.25

/**
 * Theil-Sen: the middle of the slopes of all pairs, so that a quarter of the baselines may be misread. `readingError` is the
 * half width of one reading, taken as two standard deviations. Does not depend on the order of `baselines`.
 */
export function driftOf(baselines: readonly Baseline[], readingError: number): Drift {
  const all = baselines.toSorted((a, b) => a.at - b.at || a.value - b.value)
  if (new Set(all.map(one => one.at)).size < fewestForDrift)
    return { kind: 'none', because: 'too few', wander: readingError }
  const perCut = median(slopesOf(all))
  const level = median(all.map(one => one.value - perCut * one.at))
  const residuals = all.map(one => tidy(one.value - level - perCut * one.at))
  const scatter = sigmaOf(residuals) * Math.sqrt(all.length / (all.length - 2))
  const wander = tidy(Math.max(readingError, 2 * scatter))
  const strays = residuals.map(residual => Math.abs(residual) > tidy(2 * wander))
  const count = strays.filter(Boolean).length
  const inARow = strays.some((stray, i) => stray && strays[i + 1])
  const aside = wanderAside(all, readingError)
  const hunting = all.length < fewestToTellHunting ? 0 : 1.5 * aside
  const bent = tidy(2 * scatter) > tidy(Math.max(2 * readingError, hunting))
  if (bent || inARow || count > all.length / 4) return { kind: 'none', because: 'no line', wander: aside }
  const middle = all.reduce((sum, one) => sum + one.at, 0) / all.length
  const spread = all.reduce((sum, one) => sum + (one.at - middle) ** 2, 0)
  return {
    kind: 'line',
    perCut: tidy(perCut),
    baselineAt: at => tidy(level + perCut * at),
    errorAt: at => tidy(middleForMean * wander * Math.sqrt(1 / all.length + (at - middle) ** 2 / spread)),
    wander,
    hunts: wander > tidy(2 * readingError),
    strays: count,
  }
}

function slopesOf(all: readonly Baseline[]): number[] {
  const slope = (a: Baseline, b: Baseline) => (b.at > a.at ? [(b.value - a.value) / (b.at - a.at)] : [])
  if (all.length > allPairsUpTo) {
    const half = Math.floor(all.length / 2)
    return all.slice(half).flatMap((later, i) => {
      const earlier = all[i]
      return earlier ? slope(earlier, later) : []
    })
  }
  return all.flatMap((earlier, i) => all.slice(i + 1).flatMap(later => slope(earlier, later)))
}

/** How a single reading wanders beside any slow change: from each one's distance to the chord of its neighbours. */
function wanderAside(all: readonly Baseline[], readingError: number): number {
  const bends = all.slice(1, -1).flatMap((one, i) => {
    const before = all[i]
    const after = all[i + 2]
    if (!before || !after || after.at <= before.at) return []
    const part = (one.at - before.at) / (after.at - before.at)
    return [
      (one.value - before.value - part * (after.value - before.value)) /
        Math.sqrt(1 + part ** 2 + (1 - part) ** 2),
    ]
  })
  return bends.length < 3 ? readingError : tidy(Math.max(readingError, 2 * sigmaOf(bends)))
}

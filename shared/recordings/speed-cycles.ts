// Crank speed over the engine cycle: its mean course, where in it each power stroke lifts the speed, and by how much.
import { sampleAt } from './phase.ts'

/** Speed at the samples of a recording, with the phase in power strokes (as many a cycle as cylinders). */
export type SpeedCourse = {
  time: Float64Array
  phase: Float64Array
  rpm: Float64Array
}

const fineBins = 48

/** Speed less its mean over one cycle around each sample: a change of mean speed goes, what repeats stays. */
export function withoutDrift({ phase, rpm }: SpeedCourse, strokes: number): Float64Array {
  const sums = new Float64Array(rpm.length + 1)
  const weights = new Float64Array(rpm.length + 1)
  // Trapezoids over the phase, so that a gap or uneven teeth do not weigh more or less.
  for (let at = 0; at < rpm.length; at += 1) {
    const width = ((phase[Math.min(at + 1, rpm.length - 1)] ?? 0) - (phase[Math.max(0, at - 1)] ?? 0)) / 2
    const weight = Math.min(width, 2)
    sums[at + 1] = (sums[at] ?? 0) + (rpm[at] ?? 0) * weight
    weights[at + 1] = (weights[at] ?? 0) + weight
  }
  const first = phase[0] ?? 0
  const last = phase.at(-1) ?? 0
  return rpm.map((value, at) => {
    const middle = Math.min(
      Math.max(phase[at] ?? 0, first + strokes / 2),
      Math.max(first, last - strokes / 2),
    )
    const from = sampleAt(phase, middle - strokes / 2)
    const to = Math.max(from + 1, sampleAt(phase, middle + strokes / 2))
    return value - ((sums[to] ?? 0) - (sums[from] ?? 0)) / ((weights[to] ?? 0) - (weights[from] ?? 0))
  })
}

/** Mean course over one cycle, `fineBins` values a stroke, smoothed over a twelfth of a stroke. */
export function meanCourse(flat: Float64Array, phase: Float64Array, strokes: number): Float64Array {
  const bins = fineBins * strokes
  const sums = new Float64Array(bins)
  const counts = new Float64Array(bins)
  for (const [at, value] of flat.entries()) {
    const turned = (phase[at] ?? 0) / strokes
    const bin = Math.floor((turned - Math.floor(turned)) * bins) % bins
    sums[bin] = (sums[bin] ?? 0) + value
    counts[bin] = (counts[bin] ?? 0) + 1
  }
  const reach = fineBins / 4
  const bell = Float64Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-0.5 * ((at - reach) / 4) ** 2),
  )
  return sums.map((_, bin) => {
    let [sum, weight] = [0, 0]
    for (const [at, share] of bell.entries()) {
      const other = (bin + at - reach + bins) % bins
      sum += share * (sums[other] ?? 0)
      weight += share * (counts[other] ?? 0)
    }
    return weight > 0 ? sum / weight : 0
  })
}

export type StrokePlaces = {
  /** Phase in the cycle at which each power stroke's rise begins, in order. */
  begins: number[]
  /** Phase at which it ends. */
  ends: number[]
  /** Which of the layout's intervals belongs to the first stroke. */
  turn: number
  /** Mean rise, rpm. */
  rise: number
}

/**
 * Where the strokes lift the speed: the beginnings and ends for which the mean rise is greatest.
 * @param intervalsDeg crank degrees from each firing to the next, summing to 720
 */
export function strokePlaces(course: Float64Array, intervalsDeg: readonly number[]): StrokePlaces {
  const strokes = intervalsDeg.length
  const bins = course.length
  const at = (phase: number) => course[((Math.round(phase * fineBins) % bins) + bins) % bins] ?? 0
  const even = intervalsDeg.every(interval => Math.abs(interval - 720 / strokes) < 0.5)
  let best: StrokePlaces = { begins: [], ends: [], turn: 0, rise: Number.NEGATIVE_INFINITY }
  for (let turn = 0; turn < (even ? 1 : strokes); turn += 1) {
    let sum = 0
    const starts = Array.from({ length: strokes }, (_, place) => {
      const now = sum
      sum += ((intervalsDeg[(place + turn) % strokes] ?? 0) / 720) * strokes
      return now
    })
    for (let shift = 0; shift < (even ? 1 : strokes); shift += 1 / 24) {
      for (let span = 0.25; span <= 0.75; span += 1 / 24) {
        const begins = starts.map(start => start + shift)
        const ends = begins.map((begin, place) => {
          return begin + (span * strokes * (intervalsDeg[(place + turn) % strokes] ?? 0)) / 720
        })
        const rise =
          begins.reduce((total, begin, place) => total + at(ends[place] ?? 0) - at(begin), 0) / strokes
        if (rise > best.rise) best = { begins, ends, turn, rise }
      }
    }
  }
  return best
}

/** Half of the stretch over which a level is averaged, in strokes. */
export const levelReach = 0.05
const pointsInLevel = 5

/** Level around a phase, by straight lines between samples; NaN where there are none near. */
export function levelAround(flat: Float64Array, phase: Float64Array, middle: number): number {
  let sum = 0
  for (let point = 0; point < pointsInLevel; point += 1) {
    const where = middle + levelReach * ((2 * point) / (pointsInLevel - 1) - 1)
    const right = sampleAt(phase, where)
    const [before, after] = [phase[right - 1], phase[right]]
    if (before === undefined || after === undefined || after - before > 1) return Number.NaN
    const share = after > before ? (where - before) / (after - before) : 0
    sum += (flat[right - 1] ?? 0) + share * ((flat[right] ?? 0) - (flat[right - 1] ?? 0))
  }
  return sum / pointsInLevel
}

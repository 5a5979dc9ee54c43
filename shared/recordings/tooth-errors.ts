// Unequal teeth look like changes of speed that come every turn. What the engine does to single cylinders comes every
// second turn; but cylinders that fire a turn apart look alike, so the two can only be told apart by the speed: an unequal
// tooth is the same share of the speed always, the engine's work changes the speed by less the faster it turns.
import type { SpeedCourse } from './speed-cycles.ts'

export type ToothErrors = {
  /** Relative error of each place in the turn. */
  errors: Float64Array
  /** Root mean square of what lies above all that an engine does in a turn, as a share of the speed. */
  unevenness: number
  /** Root mean square of what the correction leaves unsure, as a share of the speed. */
  leftOver: number
  /** Errors could be told apart by the speed and were. */
  separated: boolean
}

/** Fastest over slowest turn from which the errors can be told apart. */
const speedRange = 1.3

/**
 * @param turns crank turns of each sample; a sample's place in the turn comes back every turn
 * @param places places in a turn (teeth)
 * @param flat speed without its drift
 */
export function toothErrors(
  course: SpeedCourse,
  turns: Float64Array,
  places: number,
  flat: Float64Array,
  strokes: number,
): ToothErrors {
  const count = new Float64Array(places)
  const [s1, su, suu, sr, sru, srr] = Array.from({ length: 6 }, () => new Float64Array(places))
  let [slowest, fastest] = [Number.POSITIVE_INFINITY, 0]
  for (const [at, level] of flat.entries()) {
    const turn = turns[at] ?? 0
    const place = Math.floor((turn - Math.floor(turn)) * places) % places
    const mean = (course.rpm[at] ?? 0) - level
    slowest = Math.min(slowest, mean)
    fastest = Math.max(fastest, mean)
    const share = level / mean
    // 1 at 1000 rpm.
    const slow = (1000 / mean) ** 2
    count[place] = (count[place] ?? 0) + 1
    if (!s1 || !su || !suu || !sr || !sru || !srr) continue
    s1[place] = (s1[place] ?? 0) + 1
    su[place] = (su[place] ?? 0) + slow
    suu[place] = (suu[place] ?? 0) + slow * slow
    sr[place] = (sr[place] ?? 0) + share
    sru[place] = (sru[place] ?? 0) + share * slow
    srr[place] = (srr[place] ?? 0) + share * share
  }
  const mean = filled(count.map((number, place) => (number > 0 ? (sr?.[place] ?? 0) / number : Number.NaN)))
  const separated = fastest > speedRange * slowest
  const errors = !separated
    ? new Float64Array(places)
    : count.map((number, place) => {
        const [a, b, c] = [su?.[place] ?? 0, suu?.[place] ?? 0, sru?.[place] ?? 0]
        const span = number * b - a * a
        return span > 1e-9 * number * b ? (b * (sr?.[place] ?? 0) - a * c) / span : 0
      })
  // Variance of each place's error: what scatters about its straight line, spread over the range of speeds.
  const unsure = count.map((number, place) => {
    const [a, b, r, c, q] = [su, suu, sr, sru, srr].map(sums => sums?.[place] ?? 0)
    if (a === undefined || b === undefined || r === undefined || c === undefined || q === undefined) return 0
    const span = number * b - a * a
    if (number < 4 || !(span > 0)) return 0
    const error = (b * r - a * c) / span
    const slope = (number * c - a * r) / span
    const scatter = Math.max(0, q - error * r - slope * c) / (number - 2)
    return (scatter * b) / span
  })
  const leftOver = Math.sqrt(unsure.reduce((sum, one) => sum + one, 0) / places)
  return { errors, unevenness: rough(mean, strokes), leftOver, separated }
}

/** Places without a sample (the gap's) by straight lines between those beside. */
function filled(pattern: Float64Array): Float64Array {
  const places = pattern.length
  const at = (place: number) => pattern[((place % places) + places) % places] ?? Number.NaN
  return pattern.map((value, place) => {
    if (Number.isFinite(value)) return value
    let [before, after] = [1, 1]
    while (before < places && !Number.isFinite(at(place - before))) before += 1
    while (after < places && !Number.isFinite(at(place + after))) after += 1
    const mixed = (at(place - before) * after + at(place + after) * before) / (before + after)
    return Number.isFinite(mixed) ? mixed : 0
  })
}

/** Root mean square of the pattern's part above the third overtone of the firing; scaled to stand for all orders. */
function rough(pattern: Float64Array, strokes: number): number {
  const places = pattern.length
  const first = Math.ceil((4 * strokes) / 2)
  const last = Math.floor(places / 2)
  if (first >= last) return 0
  let energy = 0
  for (let order = first; order <= last; order += 1) {
    let [re, im] = [0, 0]
    for (const [place, value] of pattern.entries()) {
      re += value * Math.cos((2 * Math.PI * order * place) / places)
      im += value * Math.sin((2 * Math.PI * order * place) / places)
    }
    energy += (2 * (re * re + im * im)) / places ** 2
  }
  return Math.sqrt((energy * last) / (last - first + 1))
}

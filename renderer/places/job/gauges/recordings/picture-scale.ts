// From an envelope to a path, and round numbers for its axes.
import type { RecordingAnalysis } from '../../../../../shared/contract/recordings-contract.ts'

type Envelope = RecordingAnalysis['envelope']
type Frame = { width: number; top: number; bottom: number }
type Levels = { low: number; high: number }

/** Finest step of the drawing, in its own units. */
const finestStep = 1

/**
 * The part of an envelope from one time to another as a closed path: along the highest levels and back along the lowest.
 * A stretch without samples breaks it. `y` gives the height of a level. Without `levels` all of the part is in the frame.
 */
export function drawn(
  envelope: Envelope,
  from: number,
  to: number,
  { width, top, bottom }: Frame,
  levels?: Levels,
) {
  const count = envelope.low.length
  const seconds = (envelope.to - envelope.from) / Math.max(1, count)
  const first = Math.max(0, Math.floor((from - envelope.from) / Math.max(1e-12, seconds)))
  const last = Math.min(count - 1, Math.ceil((to - envelope.from) / Math.max(1e-12, seconds)))
  const each = Math.max(1, Math.ceil(((last - first + 1) / width) * finestStep))
  const columns: { x: number; low: number; high: number }[][] = [[]]
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let at = first; at <= last; at += each) {
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let part = at; part < Math.min(at + each, last + 1); part += 1) {
      least = Math.min(least, envelope.low[part] ?? Number.POSITIVE_INFINITY)
      most = Math.max(most, envelope.high[part] ?? Number.NEGATIVE_INFINITY)
    }
    if (least > most) {
      if ((columns.at(-1)?.length ?? 0) > 0) columns.push([])
      continue
    }
    const middle = envelope.from + (at + each / 2) * seconds
    columns.at(-1)?.push({ x: ((middle - from) / (to - from)) * width, low: least, high: most })
    low = Math.min(low, least)
    high = Math.max(high, most)
  }
  const isCut = levels !== undefined && (low < levels.low || high > levels.high)
  if (levels) [low, high] = [levels.low, levels.high]
  if (low > high) [low, high] = [0, 1]
  if (low === high) [low, high] = [low - 1, high + 1]
  const y = (level: number) => bottom - ((level - low) / (high - low)) * (bottom - top)
  const at = (x: number, level: number) => `${x.toFixed(1)} ${y(level).toFixed(1)}`
  const path = columns
    .filter(part => part.length > 0)
    .map(part => {
      const there = part.map(one => at(one.x, one.high))
      const back = part.toReversed().map(one => at(one.x, one.low))
      return `M${[...there, ...back].join('L')}Z`
    })
    .join('')
  return { path, low, high, y, isCut }
}

/**
 * Levels between two times with some room around them, for a frame in which what was found is large; undefined where
 * there is nothing between.
 */
export function levelsBetween(envelope: Envelope, from: number, to: number): Levels | undefined {
  const count = envelope.low.length
  const place = (time: number) =>
    ((time - envelope.from) / Math.max(1e-12, envelope.to - envelope.from)) * count
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let at = Math.max(0, Math.floor(place(from))); at < Math.min(count, place(to)); at += 1) {
    low = Math.min(low, envelope.low[at] ?? Number.POSITIVE_INFINITY)
    high = Math.max(high, envelope.high[at] ?? Number.NEGATIVE_INFINITY)
  }
  const room = 0.15 * (high - low)
  return high > low ? { low: low - room, high: high + room } : undefined
}

/** Round numbers (1, 2 or 5 times a power of ten apart) from one level to another, at most `most`. */
export function ticksBetween(from: number, to: number, most: number): number[] {
  const span = to - from
  if (!(span > 0)) return [from]
  const rough = span / most
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = ([1, 2, 5, 10].find(one => one * power >= rough) ?? 10) * power
  const ticks: number[] = []
  for (let at = Math.ceil(from / step); at * step <= to; at += 1)
    ticks.push(Number((at * step).toPrecision(10)))
  return ticks
}

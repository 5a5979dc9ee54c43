// Finds the stretch in which the starter turned the engine: after the in-rush spike, before the key was let go.
import type { ThinSeries } from './thin-series.ts'

export type CrankingPart = {
  from: number
  to: number
  /** Seconds at which the starter was switched on; null where the recording begins with the engine turning. */
  switchedOn: number | null
  /** Stretches with current on: more than one when the key was turned again. */
  bursts: number
}

const sorted = (values: Iterable<number>) => Float64Array.from(values).sort()
const share = (values: Float64Array, part: number): number =>
  values[Math.min(values.length - 1, Math.floor(part * values.length))] ?? 0

/** Mean over about 50 ms around each bin: noise and commutator ripple go, humps stay. */
function smoothed(series: ThinSeries, seconds: number): Float64Array {
  const { time, level } = series
  const out = new Float64Array(time.length)
  let [from, to, sum] = [0, 0, 0]
  for (let index = 0; index < time.length; index += 1) {
    const now = time[index] ?? 0
    while (to < time.length && (time[to] ?? 0) <= now + seconds / 2) sum += level[to++] ?? 0
    while ((time[from] ?? 0) < now - seconds / 2) sum -= level[from++] ?? 0
    out[index] = sum / (to - from)
  }
  return out
}

/** Current on means above this share of the way from rest to the usual cranking current. */
const onShare = 0.3

/**
 * The longest stretch of cranking, or null where there is none.
 * @param longestHump seconds from one hump to the next at the slowest cranking speed; shorter dips do not end a stretch
 */
export function crankingPart(series: ThinSeries, longestHump: number): CrankingPart | null {
  const { time } = series
  if (time.length < 20) return null
  const smooth = smoothed(series, 0.05)
  const ranked = sorted(smooth)
  const rest = share(ranked, 0.01)
  const upper = ranked.filter(value => value > rest + 0.25 * (share(ranked, 0.95) - rest))
  const usual = share(upper, 0.5)
  if (!(usual > rest)) return null
  const limit = rest + onShare * (usual - rest)

  const stretches: { from: number; to: number }[] = []
  for (let index = 0; index < time.length; index += 1) {
    if ((smooth[index] ?? 0) < limit) continue
    const open = stretches.at(-1)
    if (open && (time[index] ?? 0) - (time[open.to - 1] ?? 0) <= longestHump) open.to = index + 1
    else stretches.push({ from: index, to: index + 1 })
  }
  const lasting = (one: { from: number; to: number }) => (time[one.to - 1] ?? 0) - (time[one.from] ?? 0)
  const bursts = stretches.filter(one => lasting(one) > longestHump)
  const longest = bursts.toSorted((a, b) => lasting(b) - lasting(a))[0]
  if (!longest) return null
  const begin = time[longest.from] ?? 0
  const startsAtRest = begin - (time[0] ?? 0) > 0.02
  const endsAtRest = (time.at(-1) ?? 0) - (time[longest.to - 1] ?? 0) > 0.02
  const from = afterInRush(series, longest.from, longest.to, longestHump)
  // The mean over 50 ms smears the moment of letting go.
  const cutOff = (time[longest.to - 1] ?? 0) - (endsAtRest ? 0.05 : 0)
  let to = longest.to
  while (to > from && (time[to - 1] ?? 0) > cutOff) to -= 1
  return { from, to, switchedOn: startsAtRest ? begin : null, bursts: bursts.length }
}

/** First bin after a spike well above what follows; the stretch's own start where there is no spike. */
function afterInRush(series: ThinSeries, from: number, to: number, longestHump: number): number {
  const { time, level } = series
  const later = sorted(level.subarray(Math.floor(from + (to - from) * 0.3), to))
  const middle = share(later, 0.5)
  const top = share(later, 0.98)
  const spikeLimit = top + 0.35 * (top - share(later, 0.02))
  const begin = time[from] ?? 0
  let lastHigh = -1
  for (let index = from; index < to && (time[index] ?? 0) - begin < longestHump; index += 1) {
    if ((level[index] ?? 0) > spikeLimit) lastHigh = index
  }
  if (lastHigh < 0) return from
  let index = lastHigh
  while (index < to && (level[index] ?? 0) > middle) index += 1
  return index
}

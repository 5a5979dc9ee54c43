// The lowest and highest level of even stretches of a recording: all that a picture of it needs.
import type { ThinSeries } from './thin-series.ts'

export type Envelope = {
  from: number
  to: number
  /** Null where a stretch has no sample. */
  low: (number | null)[]
  high: (number | null)[]
}

/** A minute in stretches of 10 ms: enough to look into single humps. */
const stretches = 6000

/** Two decimals are far below a pixel. */
const drawn = (level: number) => Math.round(level * 100) / 100

export function envelopeOf(series: ThinSeries): Envelope {
  const { time, high, low } = series
  const from = time[0] ?? 0
  const to = time.at(-1) ?? from
  const count = Math.max(1, Math.min(stretches, time.length))
  const envelope: Envelope = { from, to, low: Array(count).fill(null), high: Array(count).fill(null) }
  for (const [at, now] of time.entries()) {
    const stretch = to > from ? Math.min(count - 1, Math.floor(((now - from) / (to - from)) * count)) : 0
    const [below, above] = [low[at] ?? 0, high[at] ?? 0]
    const [lowest, highest] = [envelope.low[stretch] ?? null, envelope.high[stretch] ?? null]
    envelope.low[stretch] = drawn(lowest === null ? below : Math.min(lowest, below))
    envelope.high[stretch] = drawn(highest === null ? above : Math.max(highest, above))
  }
  return envelope
}

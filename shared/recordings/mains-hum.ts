// Takes mains hum (50 or 60 Hz and what it leaves at twice and three times that) out of a recording.
import type { EvenSeries } from './even-series.ts'

/** A line this many times as strong as its surroundings is hum. */
const standsOut = 25
const mains = [50, 60] as const

type Line = { cosine: number; sine: number }

function line(level: Float64Array, step: number, rate: number): Line {
  const turn = 2 * Math.PI * rate * step
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  let [x, y, cosine, sine] = [1, 0, 0, 0]
  const { length } = level
  for (let index = 0; index < length; index += 1) {
    const value = (level[index] ?? 0) * (0.5 - 0.5 * Math.cos((2 * Math.PI * (index + 0.5)) / length))
    cosine += value * x
    sine += value * y
    ;[x, y] = [x * c - y * s, x * s + y * c]
  }
  // The window halves the sum; a cosine of amplitude 1 gives half its length.
  return { cosine: (4 * cosine) / length, sine: (4 * sine) / length }
}

const strength = (one: Line) => one.cosine ** 2 + one.sine ** 2

/**
 * @param left the recording less its slow course and less what repeats with the engine
 * @param leastAmplitude a weaker line is left alone
 * @returns the same stretch with the hum taken away, and the hum's frequency where there was any
 */
export function withoutHum(
  series: EvenSeries,
  left: Float64Array,
  leastAmplitude: number,
): { series: EvenSeries; hum: number | null } {
  const level = Float64Array.from(series.level)
  const rest = Float64Array.from(left)
  const seconds = left.length * series.step
  let hum: number | null = null
  for (const base of mains) {
    for (const rate of [base, 2 * base, 3 * base]) {
      if (rate > 0.45 / series.step) continue
      const apart = 3 / seconds
      if (apart > 0.2 * rate) continue
      const beside = [-3, -2, -1, 1, 2, 3].map(away => strength(line(rest, series.step, rate + away * apart)))
      const around = beside.sort((a, b) => a - b)[3] ?? 0
      let best = rate
      let found = line(rest, series.step, rate)
      for (const offset of [-0.4, -0.2, 0.2, 0.4]) {
        const other = line(rest, series.step, rate + offset / seconds)
        if (strength(other) > strength(found)) [best, found] = [rate + offset / seconds, other]
      }
      if (strength(found) < Math.max(standsOut * around, leastAmplitude ** 2)) continue
      if (rate === base) hum = base
      for (let index = 0; index < level.length; index += 1) {
        const turn = 2 * Math.PI * best * series.step * index
        const value = found.cosine * Math.cos(turn) + found.sine * Math.sin(turn)
        level[index] = (level[index] ?? 0) - value
        rest[index] = (rest[index] ?? 0) - value
      }
    }
  }
  return { series: { ...series, level }, hum }
}

// Thins a recording to millisecond bins while it streams past: what the analysis needs of 100,000 samples a second.

/** The widest hump rate of a cranked twelve is near 40 Hz: a bin of 1 ms keeps its fourth harmonic. */
const binSeconds = 0.001
/** 10 minutes; longer recordings are refused by the reader before this is reached. */
const mostBins = 600_000

/** Mean time and level of each bin that has samples, in order of time. */
export type ThinSeries = {
  time: Float64Array
  level: Float64Array
  /** Highest and lowest sample of each bin. */
  high: Float64Array
  low: Float64Array
  samples: number
  /** Samples without a number. */
  missing: number
  /** Samples with a time before that of the one ahead of them. */
  backwards: number
}

export type Thinning = {
  add: (time: number, level: number) => void
  done: () => ThinSeries
}

/** Collects samples in the order they were taken; samples that step back in time are counted and left out. */
export function startThinning(): Thinning {
  let time = new Float64Array(4096)
  let level = new Float64Array(4096)
  let high = new Float64Array(4096)
  let low = new Float64Array(4096)
  let bins = 0
  let bin = Number.NEGATIVE_INFINITY
  let [sumTime, sumLevel, count, top, bottom] = [0, 0, 0, 0, 0]
  let [samples, missing, backwards] = [0, 0, 0]
  let last = Number.NEGATIVE_INFINITY

  const grow = (from: Float64Array<ArrayBuffer>) => {
    const to = new Float64Array(from.length * 2)
    to.set(from)
    return to
  }
  const close = () => {
    if (count === 0 || bins >= mostBins) return
    if (bins === time.length) [time, level, high, low] = [grow(time), grow(level), grow(high), grow(low)]
    time[bins] = sumTime / count
    level[bins] = sumLevel / count
    high[bins] = top
    low[bins] = bottom
    bins += 1
  }
  return {
    add(at, value) {
      samples += 1
      // NaN is the only number unlike itself.
      if (value !== value || at !== at) {
        missing += 1
        return
      }
      if (at < last) {
        backwards += 1
        return
      }
      last = at
      const next = Math.floor(at / binSeconds)
      if (next !== bin) {
        close()
        bin = next
        sumTime = at
        sumLevel = value
        top = value
        bottom = value
        count = 1
        return
      }
      sumTime += at
      sumLevel += value
      count += 1
      if (value > top) top = value
      if (value < bottom) bottom = value
    },
    done() {
      close()
      count = 0
      return {
        time: time.slice(0, bins),
        level: level.slice(0, bins),
        high: high.slice(0, bins),
        low: low.slice(0, bins),
        samples,
        missing,
        backwards,
      }
    },
  }
}

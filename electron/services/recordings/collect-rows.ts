// Takes the rows of a recording as they stream past and keeps what the analysis needs: millisecond bins of a level, or the
// time of every tooth edge.
import type { RecordingMapping } from '../../../shared/contract/recordings-contract.ts'
import { startThinning, type ThinSeries } from '../../../shared/recordings/thin-series.ts'

export type Collected =
  | { kind: 'level'; level: ThinSeries; sync?: ThinSeries }
  | { kind: 'edges'; edges: Float64Array; sync?: ThinSeries }

export type Collector = {
  row: (time: number, value: number, sync: number) => void
  /** Seconds of the first row and of the latest. */
  span: () => { from: number; to: number }
  done: () => Collected
}

const seconds = { s: 1, ms: 1e-3, us: 1e-6 } as const

/** Mapping with a level (current or rpm) over time; `rate` where there is no time column. */
export function collectLevel({ timeColumn, timeUnit, rate, scale, syncColumn }: RecordingMapping): Collector {
  const unit = seconds[timeUnit]
  const step = 1 / (rate ?? 1)
  const timed = timeColumn !== undefined
  const level = startThinning()
  const sync = syncColumn === undefined ? undefined : startThinning()
  let rows = 0
  let [from, to] = [0, 0]
  return {
    row(time, value, pulse) {
      const now = timed ? time * unit : rows * step
      if (rows === 0) [from, to] = [now, now]
      rows += 1
      if (now > to) to = now
      level.add(now, value * scale)
      sync?.add(now, pulse)
    },
    span: () => ({ from, to }),
    done: () => ({ kind: 'level', level: level.done(), ...(sync ? { sync: sync.done() } : {}) }),
  }
}

/** Mapping with one row for each tooth: its time, or the time since the one before. */
export function collectEdges({ timeUnit, value, syncColumn }: RecordingMapping): Collector {
  const unit = seconds[timeUnit]
  const isInterval = value === 'tooth interval'
  const sync = syncColumn === undefined ? undefined : startThinning()
  let edges = new Float64Array(8192)
  let count = 0
  let now = 0
  const add = (edge: number) => {
    if (count === edges.length) {
      const more = new Float64Array(edges.length * 2)
      more.set(edges)
      edges = more
    }
    edges[count] = edge
    count += 1
  }
  return {
    row(_, level, pulse) {
      // A row without a number, or one that does not go on in time, is a lost edge.
      const goesOn = isInterval ? level > 0 : count === 0 || level * unit > now
      if (!goesOn) return
      if (isInterval) {
        if (count === 0) add(0)
        now += level * unit
      } else now = level * unit
      add(now)
      sync?.add(now, pulse)
    },
    span: () => ({ from: edges[0] ?? 0, to: now }),
    done: () => ({ kind: 'edges', edges: edges.slice(0, count), ...(sync ? { sync: sync.done() } : {}) }),
  }
}

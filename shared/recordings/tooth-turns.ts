// From the times of a toothed wheel's edges to crank angle: the gap of missing teeth marks each turn.

export type ToothEdges = {
  /** Seconds of each edge, one a tooth, rising. */
  time: Float64Array
  /** Teeth in a full turn, the missing ones counted. */
  teeth: number
  /** Teeth missing in a row: 2 for a 60-2 wheel; 0 for a full wheel. */
  missing: number
}

export type Turns = {
  /** Seconds at the middle of each tooth pitch. */
  time: Float64Array
  /** Crank turns from any start; whole numbers at the gap. */
  turn: Float64Array
  rpm: Float64Array
  /** Turns left out because their number of edges is not right. */
  spoiled: number
}

export type TurnsOrWhy = { turns: Turns } | { why: 'no gap' } | { why: 'other wheel'; teethBetween: number }

/** Share of a pitch by which a gap must be longer than an ordinary one. */
const gapMargin = 0.6

/** More turns than this without a gap seen cannot be counted. */
const mostLost = 20

const middle = (values: Float64Array): number =>
  values.toSorted()[Math.floor(values.length / 2)] ?? Number.NaN

/** Indices of intervals that hold the gap: longer than both neighbours by the missing teeth. */
function gapsIn(intervals: Float64Array, missing: number): number[] {
  const gaps: number[] = []
  const least = 1 + missing * gapMargin
  for (let at = 1; at + 1 < intervals.length; at += 1) {
    const beside = Math.max(intervals[at - 1] ?? 0, intervals[at + 1] ?? 0)
    if ((intervals[at] ?? 0) > least * beside) gaps.push(at)
  }
  return gaps
}

/** Turns of a wheel with or without missing teeth, or why they cannot be told. */
export function turnsOf({ time, teeth, missing }: ToothEdges): TurnsOrWhy {
  const intervals = Float64Array.from({ length: Math.max(0, time.length - 1) }, (_, at) => {
    return (time[at + 1] ?? 0) - (time[at] ?? 0)
  })
  if (missing === 0) return { turns: fullWheel(time, intervals, teeth) }
  const gaps = gapsIn(intervals, missing)
  if (gaps.length < 3) return { why: 'no gap' }
  const between = Float64Array.from(gaps.slice(1), (gap, at) => gap - (gaps[at] ?? 0))
  const usual = middle(between)
  if (usual !== teeth - missing) return { why: 'other wheel', teethBetween: usual }
  return { turns: gappedWheel(time, intervals, gaps, teeth, missing) }
}

function fullWheel(time: Float64Array, intervals: Float64Array, teeth: number): Turns {
  return {
    time: intervals.map((interval, at) => (time[at] ?? 0) + interval / 2),
    turn: intervals.map((_, at) => (at + 0.5) / teeth),
    rpm: intervals.map(interval => 60 / teeth / interval),
    spoiled: 0,
  }
}

function gappedWheel(
  time: Float64Array,
  intervals: Float64Array,
  gaps: number[],
  teeth: number,
  missing: number,
): Turns {
  const out: { time: number; turn: number; rpm: number }[] = []
  let spoiled = 0
  let turn = 0
  let lastSeconds = Number.NaN
  for (const [place, gap] of gaps.slice(0, -1).entries()) {
    const next = gaps[place + 1] ?? gap
    const seconds = (time[next] ?? 0) - (time[gap] ?? 0)
    if (next - gap !== teeth - missing) {
      // Lost or added edges: the turns still pass, as many as their time says, so that the two turns of a cycle stay apart.
      spoiled += 1
      turn += Number.isFinite(lastSeconds)
        ? Math.min(mostLost, Math.max(1, Math.round(seconds / lastSeconds)))
        : 1
      continue
    }
    // The gap's edge to edge is one sample over missing + 1 pitches.
    let pitch = 0
    for (let at = gap; at < next; at += 1) {
      const pitches = at === gap ? missing + 1 : 1
      const interval = intervals[at] ?? 0
      out.push({
        time: (time[at] ?? 0) + interval / 2,
        turn: turn + (pitch + pitches / 2) / teeth,
        rpm: (60 * pitches) / teeth / interval,
      })
      pitch += pitches
    }
    turn += 1
    lastSeconds = seconds
  }
  return {
    time: Float64Array.from(out, one => one.time),
    turn: Float64Array.from(out, one => one.turn),
    rpm: Float64Array.from(out, one => one.rpm),
    spoiled,
  }
}

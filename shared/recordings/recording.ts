// What a recording is and what is told of it: events found in it, values with intervals, and remarks on what spoiled it.

/** One event to mark on the picture of a recording. */
export type FoundEvent = {
  /** Seconds, on the recording's own clock. */
  time: number
  /** Place in the firing sequence counted from the first event found, from 1. */
  position: number
  /** Known only where a sync signal names it. */
  cylinder: number | null
  /** Left out of the averages: clipped, cut off, or in a cycle that does not agree with the others. */
  leftOut: boolean
}

export type Remark = {
  code: string
  /** What was seen and what to do about it, in full sentences. */
  text: string
}

/** Measured share of one place in the firing sequence. */
export type PositionValue = {
  position: number
  cylinder: number | null
  percent: number
  /** Half width of the 95 % interval, in percent points; absent where too few cycles allow one. */
  plusMinus?: number
}

/** A recording that cannot be evaluated gives no values and says why in its remarks. */
export type RecordingResult = {
  method: string
  values: PositionValue[]
  events: FoundEvent[]
  synced: boolean
  /** Cycles of 720 degrees that entered the averages. */
  cycles: number
  rpm: number | null
  remarks: Remark[]
}

/** A result without values: what was the matter and what to do. */
export const nothingFound = (method: string, code: string, text: string): RecordingResult => ({
  method,
  values: [],
  events: [],
  synced: false,
  cycles: 0,
  rpm: null,
  remarks: [{ code, text }],
})

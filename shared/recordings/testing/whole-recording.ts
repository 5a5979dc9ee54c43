// A recording held in whole arrays, and its way into the analysis, which else is fed while a file streams past.
import type { Layout } from '../../engine/layout-schema.ts'
import type { RecordingResult } from '../recording.ts'
import { relativeCompression } from '../relative-compression.ts'
import { startThinning, type ThinSeries } from '../thin-series.ts'

/** Seconds and amperes, sample by sample; NaN amperes where a sample is missing. */
export type StarterRecording = {
  time: Float64Array
  amperes: Float64Array
  /** Any signal that pulses once a cycle (720 degrees) near the firing of cylinder 1; any unit, any polarity. */
  sync?: Float64Array
}

export function thinned(time: Float64Array, level: Float64Array): ThinSeries {
  const thinning = startThinning()
  for (const [index, at] of time.entries()) thinning.add(at, level[index] ?? Number.NaN)
  return thinning.done()
}

/** Relative compression of a recording in whole arrays. */
export function compressionOf({ time, amperes, sync }: StarterRecording, layout: Layout): RecordingResult {
  const current = thinned(time, amperes)
  return relativeCompression({ current, ...(sync ? { sync: thinned(time, sync) } : {}) }, layout)
}

// From the file of a recording to the finished result: read, evaluate, and reduce to what the page draws.
import type {
  RecordingAnalysis,
  RecordingMapping,
  RecordingTestKind,
} from '../../../shared/contract/recordings-contract.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import type { RecordingEntry } from '../../../shared/gauges/recording-entry.ts'
import { envelopeOf } from '../../../shared/recordings/envelope.ts'
import type { RecordingResult } from '../../../shared/recordings/recording.ts'
import { relativeCompression } from '../../../shared/recordings/relative-compression.ts'
import { type ReadHooks, readSamples, type ReadSamples } from './read-samples.ts'

export type AnalyseRequest = {
  path: string
  /** As the person knows it: kept with the result, and named in faults. */
  name: string
  layout: Layout
  test: RecordingTestKind
  mapping: RecordingMapping
}

const mostRemarks = 20
const longestRemark = 300
/** One digit more than the interval has. */
const rounded = (value: number) => Math.round(value * 100) / 100

/** Throws as `readSamples`. A recording without a result is no failure: its remarks say what was the matter. */
export async function analyseRecording(
  request: AnalyseRequest,
  hooks: ReadHooks = {},
): Promise<RecordingAnalysis> {
  const { path, name, layout, mapping } = request
  const read = await readSamples({ path, name }, mapping, hooks)
  const result = relativeCompression(
    { current: read.value, ...(read.sync ? { sync: read.sync } : {}) },
    layout,
  )
  const entry = entryOf(request, read, result)
  return {
    ...(entry ? { entry } : {}),
    remarks: result.remarks,
    events: result.events,
    envelope: { ...envelopeOf(read.value), unit: 'A' },
    rows: read.counts.rows,
    wrongRows: read.counts.wrongRows,
    firstWrongRows: read.counts.firstWrongRows,
  }
}

function entryOf(request: AnalyseRequest, read: ReadSamples, result: RecordingResult): RecordingEntry | null {
  if (result.values.length === 0) return null
  const mapping: RecordingEntry['source']['mapping'] = {}
  for (const [name, value] of Object.entries(request.mapping)) if (value !== undefined) mapping[name] = value
  return {
    source: {
      fileName: request.name.slice(0, 255),
      recording: read.sha256,
      seconds: rounded(read.seconds),
      samples: read.counts.rows,
      mapping,
      method: result.method,
    },
    synced: result.synced,
    values: result.values.map(({ position, cylinder, percent, plusMinus }) => ({
      position,
      ...(cylinder === null ? {} : { cylinder }),
      percent: rounded(percent),
      ...(plusMinus === undefined ? {} : { plusMinus: rounded(plusMinus) }),
    })),
    cycles: result.cycles,
    ...(result.rpm === null ? {} : { rpm: rounded(result.rpm) }),
    remarks: result.remarks.slice(0, mostRemarks).map(remark => remark.text.slice(0, longestRemark)),
  }
}

// From the file of a recording to the finished result: read, evaluate, and reduce to what the page draws.
import type {
  RecordingAnalysis,
  RecordingMapping,
  RecordingTestKind,
} from '../../../shared/contract/recordings-contract.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import type { RecordingEntry } from '../../../shared/gauges/recording-entry.ts'
import { crankContribution } from '../../../shared/recordings/crank-contribution.ts'
import { envelopeOf } from '../../../shared/recordings/envelope.ts'
import type { RecordingResult } from '../../../shared/recordings/recording.ts'
import { relativeCompression } from '../../../shared/recordings/relative-compression.ts'
import { startThinning, type ThinSeries } from '../../../shared/recordings/thin-series.ts'
import { turnsOf } from '../../../shared/recordings/tooth-turns.ts'
import { FaultError } from '../fault.ts'
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
const rounded = (value: number) => Math.round(value * 100) / 100

/** Throws as `readSamples`. A recording without a result is no failure: its remarks say what was the matter. */
export async function analyseRecording(
  request: AnalyseRequest,
  hooks: ReadHooks = {},
): Promise<RecordingAnalysis> {
  const { path, name, mapping, test } = request
  if ((mapping.value === 'current') !== (test === 'relative compression'))
    throw new FaultError('BAD_INPUT', {
      what: `The columns were read as ${mapping.value}, which is not what ${test} is made from.`,
      where: name,
      hint: 'Choose what the value column holds.',
    })
  const read = await readSamples({ path, name }, mapping, hooks)
  const { result, drawn } = evaluated(request, read)
  const entry = entryOf(request, read, result)
  return {
    ...(entry ? { entry } : {}),
    remarks: result.remarks,
    events: result.events,
    envelope: { ...envelopeOf(drawn), unit: test === 'relative compression' ? 'A' : 'rpm' },
    rows: read.counts.rows,
    wrongRows: read.counts.wrongRows,
    firstWrongRows: read.counts.firstWrongRows,
  }
}

/** The result, and the course that is drawn. */
function evaluated(
  { layout, test, mapping }: AnalyseRequest,
  { collected }: ReadSamples,
): { result: RecordingResult; drawn: ThinSeries } {
  const synced = collected.sync ? { sync: collected.sync } : {}
  if (collected.kind === 'edges') {
    const edges = { time: collected.edges, teeth: mapping.teeth ?? 0, missing: mapping.missingTeeth ?? 0 }
    return {
      result: crankContribution({ kind: 'teeth', edges, ...synced }, layout),
      drawn: speedOf(edges),
    }
  }
  const { level } = collected
  const result =
    test === 'relative compression'
      ? relativeCompression({ current: level, ...synced }, layout)
      : crankContribution({ kind: 'rpm', speed: level, ...synced }, layout)
  return { result, drawn: level }
}

/** Speed tooth by tooth; where the wheel's gap is not found, as if every row were one tooth. */
function speedOf(edges: Parameters<typeof turnsOf>[0]): ThinSeries {
  const found = turnsOf(edges)
  const known = 'turns' in found ? found : turnsOf({ ...edges, missing: 0 })
  const thinning = startThinning()
  if ('turns' in known) {
    for (const [at, time] of known.turns.time.entries()) thinning.add(time, known.turns.rpm[at] ?? Number.NaN)
  }
  return thinning.done()
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
      percent: Math.max(-1000, Math.min(1000, rounded(percent))),
      ...(plusMinus === undefined || !Number.isFinite(plusMinus) ? {} : { plusMinus: rounded(plusMinus) }),
    })),
    cycles: result.cycles,
    ...(result.rpm === null ? {} : { rpm: rounded(result.rpm) }),
    remarks: result.remarks.slice(0, mostRemarks).map(remark => remark.text.slice(0, longestRemark)),
  }
}

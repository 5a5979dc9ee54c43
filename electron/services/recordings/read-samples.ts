// Reads the samples of a recording file into what the analysis needs, in one pass over its bytes.
import { createHash } from 'node:crypto'
import type { RecordingMapping } from '../../../shared/contract/recordings-contract.ts'
import { FaultError } from '../fault.ts'
import { type Collected, collectEdges, collectLevel } from './collect-rows.ts'
import { readRows, type RowCounts } from './read-rows.ts'
import { streamBytes } from './recording-bytes.ts'

export type ReadSamples = {
  collected: Collected
  counts: RowCounts
  /** Seconds from the first sample to the last. */
  seconds: number
  sha256: string
}

export type ReadHooks = { onProgress?: (done: number, total: number) => void; signal?: AbortSignal }

const longestSeconds = 600
const fewestRows = 50

/** Throws BAD_INPUT for a file or mapping that gives no recording, TOO_LARGE, NOT_FOUND, and the signal's reason. */
export async function readSamples(
  file: { path: string; name: string },
  mapping: RecordingMapping,
  { onProgress, signal }: ReadHooks = {},
): Promise<ReadSamples> {
  const bad = (what: string, hint: string) => new FaultError('BAD_INPUT', { what, where: file.name, hint })
  const byTeeth = mapping.value === 'tooth interval' || mapping.value === 'tooth time'
  if (byTeeth && mapping.teeth === undefined)
    throw bad(
      'The number of teeth is not given.',
      'Choose the wheel: teeth in a turn, and how many are missing.',
    )
  if (!byTeeth && mapping.timeColumn === undefined && mapping.rate === undefined)
    throw bad(
      'Without a time column the samples a second must be given.',
      'Type how many samples a second were taken.',
    )
  const collector = byTeeth ? collectEdges(mapping) : collectLevel(mapping)
  // One row a tooth has no time column besides its own.
  const { timeColumn: _, ...untimed } = mapping
  const reader = readRows(byTeeth ? untimed : mapping, collector.row)
  const hash = createHash('sha256')
  await streamBytes(file.path, file.name, (bytes, done, size) => {
    signal?.throwIfAborted()
    hash.update(bytes)
    reader.push(bytes)
    onProgress?.(done, size)
  })
  signal?.throwIfAborted()
  const counts = reader.end()
  const { from, to } = collector.span()
  requireRecording(counts, to - from, bad)
  return { collected: collector.done(), counts, seconds: to - from, sha256: hash.digest('hex') }
}

function requireRecording(
  counts: RowCounts,
  seconds: number,
  bad: (what: string, hint: string) => FaultError,
): void {
  if (counts.notText !== null)
    throw bad(`${counts.notText}: this is no recording.`, 'Export it as CSV text, one sample a line.')
  if (counts.rows < fewestRows) {
    const example = counts.firstWrongRows[0]
    throw bad(
      `Only ${counts.rows} rows could be read${example ? `; line ${example.line}: ${example.why}` : ''}.`,
      'Check the columns and where the samples begin.',
    )
  }
  if (!(seconds > 0))
    throw bad('The time does not advance from the first row to the last.', 'Check which column is the time.')
  if (seconds > longestSeconds)
    throw bad(
      `The recording would be ${Math.round(seconds).toLocaleString('en')} seconds long; at most ${longestSeconds} are read.`,
      'Check the unit of the time, or save a shorter stretch.',
    )
}

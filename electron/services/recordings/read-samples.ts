// Reads the samples of a recording file into what the analysis needs, in one pass over its bytes.
import { createHash } from 'node:crypto'
import type { RecordingMapping } from '../../../shared/contract/recordings-contract.ts'
import { startThinning, type ThinSeries } from '../../../shared/recordings/thin-series.ts'
import { FaultError } from '../fault.ts'
import { readRows, type RowCounts } from './read-rows.ts'
import { streamBytes } from './recording-bytes.ts'

export type ReadSamples = {
  value: ThinSeries
  sync?: ThinSeries
  counts: RowCounts
  /** Seconds from the first sample to the last. */
  seconds: number
  sha256: string
}

export type ReadHooks = { onProgress?: (done: number, total: number) => void; signal?: AbortSignal }

const seconds = { s: 1, ms: 1e-3, us: 1e-6 } as const
export const longestSeconds = 600
const fewestRows = 50

/** Throws BAD_INPUT for a file or mapping that gives no recording, TOO_LARGE, NOT_FOUND, and the signal's reason. */
export async function readSamples(
  file: { path: string; name: string },
  mapping: RecordingMapping,
  { onProgress, signal }: ReadHooks = {},
): Promise<ReadSamples> {
  const bad = (what: string, hint: string) => new FaultError('BAD_INPUT', { what, where: file.name, hint })
  if (mapping.timeColumn === undefined && mapping.rate === undefined)
    throw bad(
      'Without a time column the samples a second must be given.',
      'Type how many samples a second were taken.',
    )
  const unit = seconds[mapping.timeUnit]
  const step = 1 / (mapping.rate ?? 1)
  const timed = mapping.timeColumn !== undefined
  const { scale } = mapping
  const value = startThinning()
  const sync = mapping.syncColumn === undefined ? undefined : startThinning()
  let row = 0
  let [first, last] = [Number.NaN, Number.NaN]
  const reader = readRows(mapping, (time, level, pulse) => {
    const now = timed ? time * unit : row * step
    if (row === 0) first = now
    row += 1
    last = now
    value.add(now, level * scale)
    sync?.add(now, pulse)
  })
  const hash = createHash('sha256')
  await streamBytes(file.path, file.name, (bytes, done, size) => {
    signal?.throwIfAborted()
    hash.update(bytes)
    reader.push(bytes)
    onProgress?.(done, size)
  })
  const counts = reader.end()
  if (counts.notText !== null)
    throw bad(`${counts.notText}: this is no recording.`, 'Export it as CSV text, one sample a line.')
  if (counts.rows < fewestRows) {
    const example = counts.firstWrongRows[0]
    throw bad(
      `Only ${counts.rows} rows could be read${example ? `; line ${example.line}: ${example.why}` : ''}.`,
      'Check the columns and where the samples begin.',
    )
  }
  if (!(last - first > 0))
    throw bad('The time does not advance from the first row to the last.', 'Check which column is the time.')
  if (last - first > longestSeconds)
    throw bad(
      `The recording would be ${Math.round(last - first).toLocaleString('en')} seconds long; at most ${longestSeconds} are read.`,
      'Check the unit of the time, or save a shorter stretch.',
    )
  return {
    value: value.done(),
    ...(sync ? { sync: sync.done() } : {}),
    counts,
    seconds: last - first,
    sha256: hash.digest('hex'),
  }
}

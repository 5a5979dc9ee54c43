// Recordings as the page uses them: a preview, an evaluation as a task, keeping the file, dropping it.
import {
  mappingSchema,
  type RecordingMapping,
  type RecordingPlace,
  type RecordingPreview,
  type RecordingTestKind,
  type RecordingWritten,
} from '../../../shared/contract/recordings-contract.ts'
import type { Pull, PullOf } from '../../../shared/job/pull-schema.ts'
import { FaultError } from '../fault.ts'
import type { JobSessions } from '../job-sessions.ts'
import type { RecordingStore } from '../store/recordings.ts'
import type { TaskWork } from '../tasks.ts'
import type { WaitingFiles } from '../waiting-files.ts'
import { beginningLines } from './beginning-text.ts'
import { columnsOf, guessMapping } from './guess-columns.ts'
import { guessTable } from './guess-table.ts'
import { beginningOf } from './recording-bytes.ts'
import { analyseInThread } from './recording-thread.ts'

export type AnalyseInput = {
  jobId: string
  source: RecordingPlace
  fileName?: string | undefined
  test: RecordingTestKind
  mapping: RecordingMapping
}

export type Recordings = {
  /** Throws NOT_FOUND, BAD_INPUT for a file that is no table of numbers, TOO_LARGE. */
  preview: (
    source: RecordingPlace,
    test: RecordingTestKind,
    written?: RecordingWritten,
  ) => Promise<RecordingPreview>
  /** What to run. Throws NOT_FOUND at once. */
  analyse: (input: AnalyseInput) => Promise<TaskWork>
  /** The analysis of a kept pull once more. Throws NOT_FOUND at once. */
  redraw: (jobId: string, pullId: string) => Promise<TaskWork>
  /** Moves a waiting file into the catalogue; its SHA-256. Throws NOT_FOUND, READ_ONLY, DISK. */
  keep: (ref: string) => Promise<string>
  discard: (ref: string) => Promise<void>
}

type Parts = { jobs: JobSessions; files: WaitingFiles; store: RecordingStore }

const previewBytes = 64 * 1024
const shownLines = 20
const shownLength = 200
/** Progress is told in whole numbers. */
const progressSteps = 100

const isRecorded = (pull: Pull): pull is PullOf<RecordingTestKind> =>
  pull.test === 'relative compression' || pull.test === 'crank speed'

export function createRecordings({ jobs, files, store }: Parts): Recordings {
  const fileOf = async (source: RecordingPlace): Promise<{ path: string; name: string }> => {
    if ('recording' in source) return { path: await store.find(source.recording), name: 'recording.csv' }
    return files.peek(source.ref)
  }

  async function analyse({ jobId, source, fileName, test, mapping }: AnalyseInput): Promise<TaskWork> {
    const { job } = await jobs.get(jobId)
    const file = await fileOf(source)
    const name = fileName ?? file.name
    return async ({ signal, onProgress }) => ({
      kind: 'recording',
      analysis: await analyseInThread(
        { path: file.path, name, layout: job.layout, test, mapping },
        {
          signal,
          onProgress: (done, total) =>
            onProgress(Math.floor((done / total) * progressSteps), progressSteps, name),
        },
      ),
    })
  }

  return {
    async preview(source, test, written) {
      const { path, name } = await fileOf(source)
      const { bytes, size } = await beginningOf(path, name, previewBytes)
      const lines = beginningLines(bytes, size, name)
      const table = guessTable(lines, written)
      if (!table)
        throw new FaultError('BAD_INPUT', {
          what: 'No rows of numbers were found at the beginning of the file.',
          where: name,
          hint: written
            ? 'Choose another separator or decimal sign.'
            : 'Export the recording as CSV, one sample a line, and add that.',
        })
      const columns = columnsOf(table)
      return {
        fileName: name.slice(0, 255),
        bytes: size,
        columns,
        lines: lines.slice(0, shownLines).map(line => line.slice(0, shownLength)),
        ...guessMapping(table, columns, test),
      }
    },
    analyse,
    async redraw(jobId, pullId) {
      const { job } = await jobs.get(jobId)
      const pull = job.pulls.filter(isRecorded).find(one => one.id === pullId)
      const mapping = mappingSchema.safeParse(pull?.entry.source.mapping)
      if (!pull || !mapping.success)
        throw new FaultError('NOT_FOUND', {
          what: 'There is no such recording, or how its columns were read is not known.',
          where: `pull ${pullId}`,
          hint: 'Add the file again.',
        })
      const { recording, fileName } = pull.entry.source
      return analyse({ jobId, source: { recording }, fileName, test: pull.test, mapping: mapping.data })
    },
    async keep(ref) {
      const { path, name } = files.peek(ref)
      const sha256 = await store.put(path, name)
      await files.discard(files.take([ref]))
      return sha256
    },
    discard: async ref => files.discard(files.take([ref])),
  }
}

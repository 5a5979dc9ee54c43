// Evaluates a recording in a thread of its own, so that the window stays alive; cancel ends the thread at once.
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { RecordingAnalysis } from '../../../shared/contract/recordings-contract.ts'
import type { Fault, FaultCode } from '../../../shared/contract/errors.ts'
import { FaultError } from '../fault.ts'
import { type AnalyseRequest, analyseRecording } from './analyse-recording.ts'
import type { ReadHooks } from './read-samples.ts'

export type WorkerAnswer =
  | { kind: 'progress'; done: number; total: number }
  | { kind: 'done'; result: RecordingAnalysis }
  | { kind: 'failed'; code: FaultCode; fault: Fault }

/** Beside the bundle, or one folder up from a chunk of it; null where the program runs from its source. */
function builtWorker(): string | null {
  const places = ['./recording-worker.js', '../recording-worker.js'].map(place =>
    fileURLToPath(new URL(place, import.meta.url)),
  )
  return places.find(place => existsSync(place)) ?? null
}

/**
 * As `analyseRecording`. Run from the source there is no built thread: then the same work is done here, part by part.
 * @param workerFile for tests
 */
export async function analyseInThread(
  request: AnalyseRequest,
  { onProgress, signal }: ReadHooks = {},
  workerFile: string | null = builtWorker(),
): Promise<RecordingAnalysis> {
  signal?.throwIfAborted()
  if (workerFile === null)
    return analyseRecording(request, { ...(onProgress ? { onProgress } : {}), ...(signal ? { signal } : {}) })
  // No environment and a bounded heap: what is kept of the largest recording takes a fraction of it.
  const worker = new Worker(workerFile, {
    workerData: request,
    env: {},
    resourceLimits: { maxOldGenerationSizeMb: 512 },
  })
  const failed = () =>
    new FaultError('BAD_INPUT', {
      what: 'The recording could not be evaluated: it takes more memory than is given to one.',
      where: request.name,
      hint: 'Save a shorter stretch, or fewer samples a second.',
    })
  return new Promise<RecordingAnalysis>((resolve, reject) => {
    const onAbort = () => reject(signal?.reason)
    signal?.addEventListener('abort', onAbort, { once: true })
    worker.on('message', (answer: WorkerAnswer) => {
      if (answer.kind === 'progress') onProgress?.(answer.done, answer.total)
      else if (answer.kind === 'done') resolve(answer.result)
      else reject(new FaultError(answer.code, answer.fault))
    })
    worker.on('error', (error: Error & { code?: string }) =>
      reject(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? failed() : error),
    )
    worker.on('exit', () => {
      signal?.removeEventListener('abort', onAbort)
      reject(failed())
    })
  }).finally(() => worker.terminate())
}

// Runs in a worker thread: reads and evaluates one recording, tells progress, and ends. The host ends it to cancel.
import { parentPort, workerData } from 'node:worker_threads'
import { FaultError } from '../fault.ts'
import { type AnalyseRequest, analyseRecording } from './analyse-recording.ts'
import type { WorkerAnswer } from './recording-thread.ts'

const tell = (answer: WorkerAnswer) => parentPort?.postMessage(answer, [])
// The host built the request and checked it; it comes over as it was given.
const request: AnalyseRequest = workerData

try {
  let told = 0
  const result = await analyseRecording(request, {
    onProgress(done, total) {
      if (done < total && done - told < total / 50) return
      told = done
      tell({ kind: 'progress', done, total })
    },
  })
  tell({ kind: 'done', result })
} catch (error) {
  if (error instanceof FaultError) tell({ kind: 'failed', code: error.code, fault: error.fault })
  else throw error
}

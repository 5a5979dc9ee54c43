// Runs in a worker thread: decodes one HEIC picture to its own code values. Plain JavaScript, because the thread is
// started from the source folder in tests and from the build output in the app. The host checks what comes back.
import { parentPort } from 'node:worker_threads'
import decode from 'heic-decode'

parentPort?.on('message', async ({ id, bytes }) => {
  try {
    const { width, height, data } = await decode({ buffer: bytes })
    parentPort.postMessage({ id, width, height, rgba: data }, [data.buffer])
  } catch (error) {
    parentPort.postMessage({ id, error: error instanceof Error ? error.message : String(error) }, [])
  }
})

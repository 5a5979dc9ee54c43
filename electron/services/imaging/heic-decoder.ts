// HEIC pixels, decoded in a worker thread: one picture at a time, the thread ended when idle, cancel ends it at once.
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import { z } from 'zod'
import { maxHeicPixels } from './picture-limits.ts'
import { RefusedPicture } from './refused-picture.ts'
import { createSemaphore } from './semaphore.ts'
import { tiffOfPixels } from './tiff-of-pixels.ts'

export type HeicDecoder = {
  /** The upright picture as a TIFF that carries `icc`. Throws RefusedPicture, or the signal's reason. */
  toTiff: (bytes: Uint8Array, icc?: Uint8Array, signal?: AbortSignal) => Promise<Uint8Array>
  /** Whether its thread lives. */
  readonly running: boolean
  close: () => Promise<void>
}

type Options = { idleMs?: number; limitMs?: number; workerFile?: string }

const answerSchema = z.union([
  z.strictObject({ id: z.int(), error: z.string() }),
  z.strictObject({
    id: z.int(),
    width: z.int().min(1),
    height: z.int().min(1),
    rgba: z.instanceof(Uint8ClampedArray).or(z.instanceof(Uint8Array)),
  }),
])

/** Beside this file in the source, beside the bundle or one folder up in the build. */
function defaultWorkerFile(): string {
  const places = ['./heic-worker.js', '../heic-worker.js'].map(place =>
    fileURLToPath(new URL(place, import.meta.url)),
  )
  return places.find(place => existsSync(place)) ?? ''
}

const damaged = 'This HEIC is damaged and cannot be opened. Copy it from the camera or phone again.'
const noDecoder =
  'HEIC cannot be opened here: a part of Plugtray is missing. Install it again, or export the photo as JPEG and add that.'
const tooSlow = 'This HEIC took too long to open. Export it as JPEG and add that.'

/** Ends the thread after `idleMs` without work and after `limitMs` on one picture (a decoder that never comes back). */
export function createHeicDecoder(options: Options = {}): HeicDecoder {
  const { idleMs = 5_000, limitMs = 30_000 } = options
  const oneAtATime = createSemaphore(1)
  let worker: Worker | null = null
  let idle: NodeJS.Timeout | undefined
  let lastId = 0

  function start(): Worker {
    const file = options.workerFile ?? defaultWorkerFile()
    if (!existsSync(file)) throw new RefusedPicture(noDecoder)
    // No environment and a bounded heap: the thread needs neither. (Its WebAssembly memory is bounded by the pixel limit.)
    const started = new Worker(file, {
      env: {},
      resourceLimits: { maxOldGenerationSizeMb: 512 },
      stderr: true,
      stdout: true,
    })
    // A thread that is being ended may still fail: nobody waits for it any more.
    started.on('error', () => undefined)
    started.on('exit', () => {
      if (worker === started) worker = null
    })
    return started
  }

  async function end(): Promise<void> {
    clearTimeout(idle)
    const ending = worker
    worker = null
    await ending?.terminate()
  }

  async function decode(bytes: Uint8Array, signal?: AbortSignal): Promise<z.infer<typeof answerSchema>> {
    signal?.throwIfAborted()
    clearTimeout(idle)
    worker ??= start()
    const thread = worker
    thread.ref()
    const id = ++lastId
    return new Promise((resolve, reject) => {
      const stopWith = (reason: unknown) => {
        settle()
        void end()
        reject(reason)
      }
      const onAbort = () => stopWith(signal?.reason)
      const onMessage = (message: unknown) => {
        const answer = answerSchema.safeParse(message)
        if (!answer.success || answer.data.id !== id) return stopWith(new RefusedPicture(damaged))
        settle()
        resolve(answer.data)
      }
      const onFailure = () => stopWith(new RefusedPicture(damaged))
      const limit = setTimeout(() => stopWith(new RefusedPicture(tooSlow)), limitMs)
      const settle = () => {
        clearTimeout(limit)
        signal?.removeEventListener('abort', onAbort)
        thread.off('message', onMessage).off('error', onFailure).off('exit', onFailure)
      }
      signal?.addEventListener('abort', onAbort, { once: true })
      thread.on('message', onMessage).on('error', onFailure).on('exit', onFailure)
      thread.postMessage({ id, bytes }, [])
    })
  }

  return {
    toTiff: (bytes, icc, signal) =>
      oneAtATime.run(
        async () => {
          const answer = await decode(bytes, signal)
          idle = setTimeout(() => void end(), idleMs)
          idle.unref()
          worker?.unref()
          if ('error' in answer) throw new RefusedPicture(damaged)
          const { width, height, rgba } = answer
          if (width * height > maxHeicPixels || rgba.length !== width * height * 4)
            throw new RefusedPicture(damaged)
          return tiffOfPixels(new Uint8Array(rgba.buffer, rgba.byteOffset, rgba.length), width, height, icc)
        },
        { signal },
      ),
    get running() {
      return worker !== null
    },
    close: end,
  }
}

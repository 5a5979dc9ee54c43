// The thread is bundled for the test as the build does it, so that what runs here is what runs in the app.
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { build } from 'vite'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { layoutById } from '../../../shared/engine/layouts.ts'
import { asCsv } from '../../../shared/recordings/testing/as-csv.ts'
import { starterRecording } from '../../../shared/recordings/testing/starter-recording.ts'
import { FaultError } from '../fault.ts'
import type { AnalyseRequest } from './analyse-recording.ts'
import { analyseInThread } from './recording-thread.ts'

const root = resolve(import.meta.dirname, '../../..')
const layout = (() => {
  const found = layoutById('i4-1342')
  if (!found) throw new Error('no layout')
  return found
})()

let folder = ''
let cache = ''
let workerFile = ''
let request: AnalyseRequest

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-thread-'))
  const caches = join(root, 'node_modules', '.cache')
  await mkdir(caches, { recursive: true })
  cache = await mkdtemp(join(caches, 'plugtray-recording-'))
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    build: {
      ssr: join(import.meta.dirname, 'recording-worker.ts'),
      outDir: cache,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: 'recording-worker.mjs' } },
    },
  })
  workerFile = join(cache, 'recording-worker.mjs')
  const made = starterRecording({ layout, percent: { 3: 75 }, noise: 0.05, rate: 5000, sync: 'cycle' })
  const path = join(folder, 'cranking.csv')
  await writeFile(path, asCsv(made.recording))
  request = {
    path,
    name: 'cranking.csv',
    layout,
    test: 'relative compression',
    mapping: {
      separator: 'comma',
      decimal: 'point',
      firstLine: 2,
      timeColumn: 0,
      timeUnit: 's',
      valueColumn: 1,
      value: 'current',
      scale: 1,
      syncColumn: 2,
    },
  }
})
afterAll(async () => {
  await rm(folder, { recursive: true, force: true })
  await rm(cache, { recursive: true, force: true })
})

describe('a recording in its thread', () => {
  test('gives the same as without the thread, and tells its progress', async () => {
    const steps: number[] = []
    const result = await analyseInThread(
      request,
      { onProgress: (done, total) => steps.push(done / total) },
      workerFile,
    )
    expect(result).toEqual(await analyseInThread(request, {}, null))
    expect(result.entry?.synced).toBe(true)
    const weak = result.entry?.values.find(value => value.cylinder === 3)
    expect(weak?.percent).toBeGreaterThan(72)
    expect(weak?.percent).toBeLessThan(78)
    expect(result.envelope.low.length).toBeGreaterThan(2000)
    expect(result.events.length).toBeGreaterThan(30)
    expect(steps.at(-1)).toBe(1)
  })

  test('tells a fault of the file as it is', async () => {
    const failure = await analyseInThread(
      { ...request, mapping: { ...request.mapping, valueColumn: 7 } },
      {},
      workerFile,
    ).catch((error: unknown) => error)
    expect(failure).toBeInstanceOf(FaultError)
    expect(failure).toMatchObject({ code: 'BAD_INPUT', fault: { where: 'cranking.csv' } })
  })

  test.each([
    ['in the thread', () => workerFile],
    ['without', () => null],
  ])('stops when it is cancelled: %s', async (_, file) => {
    const stop = new AbortController()
    const reason = new DOMException('The person cancelled.', 'AbortError')
    const work = analyseInThread(
      request,
      { signal: stop.signal, onProgress: () => stop.abort(reason) },
      file(),
    )
    await expect(work).rejects.toBe(reason)
    await expect(analyseInThread(request, { signal: stop.signal }, file())).rejects.toBe(reason)
  })
})

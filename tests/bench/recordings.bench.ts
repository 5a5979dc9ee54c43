// A recording of 60 seconds at 100,000 samples a second, about 100 MB of CSV: read and evaluated. Times and ratios against
// the least that could do the same (read the bytes, find the line ends) and against a general CSV parser on the same file.
// Writes a temporary folder only.
import { createReadStream } from 'node:fs'
import { mkdtemp, open, readFile, rm, stat } from 'node:fs/promises'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { parse } from 'csv-parse'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { analyseRecording } from '../../electron/services/recordings/analyse-recording.ts'
import { readSamples } from '../../electron/services/recordings/read-samples.ts'
import type { RecordingMapping } from '../../shared/contract/recordings-contract.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import { starterRecording } from '../../shared/recordings/testing/starter-recording.ts'

const short = process.env['PLUGTRAY_BENCH'] === 'short'
const seconds = short ? 6 : 60
const rate = 100_000
const four = layoutById('i4-1342')
if (!four) throw new Error('no layout')

let folder = ''
let path = ''
const mapping: RecordingMapping = {
  separator: 'comma',
  decimal: 'point',
  firstLine: 2,
  timeColumn: 0,
  timeUnit: 's',
  valueColumn: 1,
  value: 'current',
  scale: 1,
  syncColumn: 2,
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-recording-'))
  path = join(folder, 'cranking.csv')
  const { recording } = starterRecording({
    layout: four,
    percent: { 3: 80 },
    noise: 0.05,
    rate,
    seconds,
    sync: 'cycle',
  })
  const file = await open(path, 'w')
  await file.write('time (s),current (A),sync (V)\n')
  for (let from = 0; from < recording.time.length; from += 100_000) {
    let text = ''
    for (let at = from; at < Math.min(recording.time.length, from + 100_000); at += 1) {
      text += `${(recording.time[at] ?? 0).toFixed(5)},${(recording.amperes[at] ?? 0).toFixed(1)},${(recording.sync?.[at] ?? 0) > 2 ? 5 : 0}\n`
    }
    await file.write(text)
  }
  await file.close()
})
afterAll(() => rm(folder, { recursive: true, force: true }))

async function best(rounds: number, work: () => Promise<void>): Promise<number> {
  const times: number[] = []
  for (let round = 0; round < rounds; round += 1) {
    const begun = performance.now()
    await work()
    times.push(performance.now() - begun)
  }
  return Math.min(...times)
}

it(`a recording of ${seconds} s at ${rate} samples a second`, async () => {
  const { size } = await stat(path)
  const rows = seconds * rate
  const lines = await best(3, async () => {
    const bytes = await readFile(path)
    let count = 0
    for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) count += 1
    expect(count).toBe(rows + 1)
  })
  const split = await best(3, async () => {
    expect((await readFile(path, 'latin1')).split('\n')).toHaveLength(rows + 2)
  })
  const general = await best(1, async () => {
    let count = 0
    for await (const _ of createReadStream(path).pipe(parse({ cast: true }))) count += 1
    expect(count).toBe(rows + 1)
  })
  const read = await best(3, async () => {
    expect((await readSamples({ path, name: 'cranking.csv' }, mapping)).counts.rows).toBe(rows)
  })
  const whole = await best(3, async () => {
    const result = await analyseRecording({
      path,
      name: 'cranking.csv',
      layout: four,
      test: 'relative compression',
      mapping,
    })
    expect(result.entry?.values).toHaveLength(4)
  })
  const times = (ms: number) => (ms / lines).toPrecision(2)
  console.log(
    `${(size / 1e6).toFixed(0)} MB, ${rows} rows; Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model.trim() ?? '?'}, load ${loadavg()[0]?.toFixed(1)}`,
  )
  console.table([
    {
      what: 'read the bytes, find the line ends (baseline)',
      ms: lines.toFixed(0),
      'times the baseline': '1',
    },
    { what: 'read as text, split lines', ms: split.toFixed(0), 'times the baseline': times(split) },
    { what: 'csv-parse, numbers cast', ms: general.toFixed(0), 'times the baseline': times(general) },
    { what: 'samples read and thinned, hashed', ms: read.toFixed(0), 'times the baseline': times(read) },
    { what: 'read, evaluated and marked', ms: whole.toFixed(0), 'times the baseline': times(whole) },
  ])
})

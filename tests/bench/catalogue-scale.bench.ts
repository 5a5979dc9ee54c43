// A catalogue of 2,000 jobs and 16,000 plugs: start to list, rebuilding the index, search as one types, load, save. Times
// and ratios against the least that could do the same: JSON.parse of the same bytes, a bare write. Writes a temporary folder only.
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { JobSummary } from '../../shared/contract/summary-schema.ts'
import { searchSummaries } from '../../shared/job/search.ts'
import { type Catalogue, openCatalogue } from '../../electron/services/store/catalogue.ts'
import { type ManyJobs, writeJobs } from './many-jobs.ts'

const count = Number(process.env['PLUGTRAY_BENCH_JOBS'] ?? 2_000)
let folder = ''
let jobs: ManyJobs

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-scale-'))
  jobs = await writeJobs(folder, count)
})
afterAll(() => rm(folder, { recursive: true, force: true }))

type Row = { what: string; ms: number; baseline: string; baselineMs: number }
const rows: Row[] = []

const open = (): Promise<Catalogue> => openCatalogue(folder, { appVersion: '0.0.0' })

/** Middle of `rounds` times, in milliseconds; the first, unheated one is left out. */
async function median(rounds: number, work: (round: number) => unknown): Promise<number> {
  const times: number[] = []
  for (let round = 0; round <= rounds; round += 1) {
    const begun = performance.now()
    await work(round)
    if (round > 0) times.push(performance.now() - begun)
  }
  return middle(times)
}

const middle = (times: readonly number[]): number =>
  times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN

async function once(work: () => Promise<unknown>): Promise<number> {
  const begun = performance.now()
  await work()
  return performance.now() - begun
}

const readAll = async (names: readonly string[]) => {
  for (const name of names) JSON.parse(await readFile(name, 'utf8'))
}

/** What a search without preparation does for each key. */
const plainSearch = (summaries: readonly JobSummary[], text: string) =>
  summaries.filter(summary => JSON.stringify(summary).toLowerCase().includes(text))

it(`a catalogue of ${count} jobs`, async () => {
  const jobFiles = Array.from({ length: count }, (_, n) =>
    join(folder, 'jobs', `job-${String(n).padStart(5, '0')}`, 'job.json'),
  )
  const parseJobs = await median(1, () => readAll(jobFiles))
  let list: JobSummary[] = []
  const toList = async (): Promise<number> => {
    const begun = performance.now()
    const catalogue = await open()
    list = catalogue.list()
    const took = performance.now() - begun
    await catalogue.close()
    return took
  }
  const rebuild = await toList()
  expect(list).toHaveLength(count)
  rows.push({
    what: 'start without an index: every job verified',
    ms: rebuild,
    baseline: 'read and JSON.parse of the same jobs',
    baselineMs: parseJobs,
  })

  const shards = (await readdir(join(folder, 'index'))).map(name => join(folder, 'index', name))
  const parseShards = await median(7, () => readAll(shards))
  const starts: number[] = []
  for (let round = 0; round < 7; round += 1) starts.push(await toList())
  const start = middle(starts)
  expect(list).toHaveLength(count)
  rows.push({
    what: 'start to list',
    ms: start,
    baseline: 'read and JSON.parse of the same shards',
    baselineMs: parseShards,
  })

  const typed = 'jager misfires'
  const keys = Array.from(typed, (_, at) => typed.slice(0, at + 1))
  const prepared = await once(async () => searchSummaries(list, 'j'))
  const perKey = (await median(15, () => keys.map(text => searchSummaries(list, text)))) / keys.length
  const plainKey = (await median(5, () => keys.map(text => plainSearch(list, text)))) / keys.length
  expect(searchSummaries(list, typed).length).toBeGreaterThan(0)
  expect(searchSummaries(list, 'smokes')).toEqual(plainSearch(list, 'smokes'))
  rows.push(
    {
      what: 'search, first key (prepares every line)',
      ms: prepared,
      baseline: 'JSON.stringify and includes',
      baselineMs: plainKey,
    },
    {
      what: 'search, each further key',
      ms: perKey,
      baseline: 'JSON.stringify and includes',
      baselineMs: plainKey,
    },
  )

  const catalogue = await open()
  const id = (round: number) => `job-${String((round * 37) % count).padStart(5, '0')}`
  const load = await median(41, round => catalogue.load(id(round)))
  const bare = await median(41, round => readAll([join(folder, 'jobs', id(round), 'job.json')]))
  rows.push({
    what: 'load a job, verified',
    ms: load,
    baseline: 'read and JSON.parse of the same job',
    baselineMs: bare,
  })

  const bytes = await readFile(jobFiles[0] ?? '')
  const write = await median(41, round => writeFile(join(folder, `bare-${round % 3}`), bytes))
  const save = await median(41, async round => {
    const job = await catalogue.load(id(round))
    return catalogue.save({ ...job, notes: `note ${round}` })
  })
  rows.push({
    what: 'load, change and save a job, durable',
    ms: save,
    baseline: 'bare write of as many bytes, not flushed',
    baselineMs: write,
  })
  await catalogue.close()

  const shown = rows.map(({ what, ms, baseline, baselineMs }) => ({
    what,
    ms: ms.toFixed(2),
    'times the baseline': (ms / baselineMs).toPrecision(2),
    baseline: `${baseline} (${baselineMs.toFixed(2)} ms)`,
  }))
  console.log(
    `${jobs.count} jobs, ${jobs.plugs} plugs, ${(jobs.bytes / 1e6).toFixed(1)} MB of jobs, ${shards.length} shards; ` +
      `Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model.trim() ?? '?'}, load ${loadavg()[0]?.toFixed(1)}`,
  )
  console.table(shown)
})

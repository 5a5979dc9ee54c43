// Import of photos of 12 megapixels (safe opening, hashing, durable storing with read-back, both sizes) against libvips'
// own vipsthumbnail, which only makes the two sizes. Files a second and ratios; PLUGTRAY_BENCH=short for 24 files.
import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises'
import { availableParallelism, cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { takeIn } from '../../electron/services/intake/intake.ts'
import { openPhotoStore } from '../../electron/services/store/photos.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import { newJob } from '../../shared/job/new-job.ts'
import { type BenchPhoto, writePhotos } from './intake-photos.ts'
import { variants, vipsVersion } from './vipsthumbnail.ts'

const short = process.env.PLUGTRAY_BENCH === 'short'
const count = short ? 24 : 200
const distinct = short ? 6 : 20
const rounds = 2
const cores = availableParallelism()

let folder: string
let photos: BenchPhoto[]

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'intake-bench-'))
  await mkdir(join(folder, 'photos'))
  photos = await writePhotos(join(folder, 'photos'), count, distinct)
})
afterAll(() => rm(folder, { recursive: true, force: true }))

/** Processor seconds of this process and of its ended children, which load by others hardly changes. Linux only. */
async function processorSeconds(): Promise<number> {
  const stat = await readFile('/proc/self/stat', 'utf8').catch(() => '')
  // Fields 14 to 17 of proc(5), in hundredths of a second; the name before them may hold blanks.
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  return fields.slice(11, 15).reduce((sum, ticks) => sum + Number(ticks), 0) / 100
}

type Time = { wall: number; processor: number }

async function timed(work: () => Promise<void>): Promise<Time> {
  const [began, used] = [performance.now(), await processorSeconds()]
  await work()
  return { wall: (performance.now() - began) / 1000, processor: (await processorSeconds()) - used }
}

async function importAll(files: readonly BenchPhoto[]): Promise<void> {
  const store = openPhotoStore(await mkdtemp(join(folder, 'catalogue-')))
  const layout = layoutById('i4-1342')
  if (!layout) throw new Error('no such layout')
  const now = '2026-03-02T09:14:00Z'
  const job = newJob({ id: 'j', trayId: 't', now, complaint: '', engine: { vehicle: '' }, layout })
  let id = 0
  const { shots } = await takeIn({ files, job, photos: store, newId: () => `s${++id}`, now: () => now })
  await store.close()
  expect(shots).toHaveLength(files.length)
}

type Line = { name: string; times: Time[] }
const best = (line: Line, of: keyof Time): number => Math.min(...line.times.map(time => time[of]))

function table(ours: Line, baselines: readonly Line[]): string {
  const ratio = (line: Line, of: keyof Time) => (best(line, of) / best(ours, of)).toFixed(2)
  const row = (line: Line) =>
    [
      line.name.padEnd(58),
      `${line.times.map(time => time.wall.toFixed(1)).join(' / ')} s`.padStart(14),
      `${(count / best(line, 'wall')).toFixed(1)} files/s`.padStart(13),
      `${((best(line, 'processor') / count) * 1000).toFixed(0)} ms processor a file`.padStart(24),
      line === ours
        ? ''
        : `import: ${ratio(line, 'wall')} x as fast, 1/${ratio(line, 'processor')} of its processor time`,
    ].join('  ')
  return [ours, ...baselines].map(row).join('\n')
}

it(`imports ${count} photos of 12 megapixels`, async context => {
  const version = await vipsVersion()
  if (version === null) context.skip('vipsthumbnail is not installed')
  const ours: Line = { name: 'import: open, hash, store, read back, both sizes', times: [] }
  const baselines = variants(cores).map(variant => ({ ...variant, times: new Array<Time>() }))
  const files = photos.map(photo => photo.path)
  await importAll(photos.slice(0, 2))
  const load = loadavg()[0] ?? 0
  // Taking turns, so that whatever else the machine does falls on all alike.
  for (let round = 0; round < rounds; round++) {
    ours.times.push(await timed(() => importAll(photos)))
    for (const baseline of baselines) {
      const out = join(folder, `out-${round}-${baselines.indexOf(baseline)}`)
      baseline.times.push(await timed(() => baseline.run(files, out)))
      expect(await readdir(out)).toHaveLength(count * 2)
    }
  }
  const mean = photos.reduce((sum, photo) => sum + photo.bytes, 0) / count / 1e6
  console.log(
    [
      `${count} JPEGs of 4000 x 3000 px, ${mean.toFixed(1)} MB each, ${rounds} rounds, best counts`,
      table(ours, baselines),
      `${cpus()[0]?.model ?? 'unknown processor'}, ${cores} cores, load ${load.toFixed(2)} before; Node ${process.version}`,
      `ours: sharp ${sharp.versions.sharp} with libvips ${sharp.versions.vips}; baseline: ${version}`,
    ].join('\n'),
  )
})

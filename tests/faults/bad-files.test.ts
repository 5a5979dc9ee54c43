// Every bad file of the table, handed over among good ones: each gives its one line or goes in as what it is, the good
// ones go in, nothing is left half, nothing hangs, and memory stays bounded.
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { takeIn, type TakenIn } from '../../electron/services/intake/intake.ts'
import { openPhotoStore, type PhotoStore } from '../../electron/services/store/photos.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import { newJob } from '../../shared/job/new-job.ts'
import { shotSchema } from '../../shared/job/tray-schema.ts'
import { jpegBytes } from '../fixtures/images/pictures.ts'
import type { Expected } from './bad-files-case.ts'
import { cutShort } from './bad-files-cut-short.ts'
import { hostile } from './bad-files-hostile.ts'
import { oddButWhole } from './bad-files-odd.ts'
import { onDisk } from './bad-files-on-disk.ts'
import { otherKinds } from './bad-files-other-kinds.ts'

type Row = { what: string; path: string; name: string; expected: Expected; skip?: string }

const goodOnes = 12
const mebibyte = 1024 * 1024
let folder: string
let photos: PhotoStore
let closeSocket: () => Promise<void>
let rows: Row[]
let result: TakenIn
let seconds: number
let peak: number

async function writeRows(): Promise<Row[]> {
  const tables = [...(await cutShort()), ...otherKinds(), ...(await oddButWhole()), ...(await hostile())]
  const written = tables.map(async ({ what, name, bytes, expected }, i) => {
    const path = join(folder, 'files', `${i}.jpg`)
    await writeFile(path, bytes)
    return { what, path, name: name ?? `${what}.jpg`, expected }
  })
  const special = await onDisk(join(folder, 'disk'))
  closeSocket = special.close
  return [...(await Promise.all(written)), ...special.cases.map(one => ({ ...one, name: `${one.what}.jpg` }))]
}

/** Good photos all through the list, so that each kind of trouble has one beside it. */
async function withGoodOnes(bad: Row[]): Promise<Row[]> {
  const good = await Promise.all(
    Array.from({ length: goodOnes }, async (_, i): Promise<Row> => {
      const path = join(folder, 'files', `good-${i}.jpg`)
      await writeFile(path, await jpegBytes(1000 + i, { width: 640, height: 480 }))
      return { what: `good photo ${i}`, path, name: `good-${i}.jpg`, expected: { added: 'jpeg' } }
    }),
  )
  const every = Math.ceil(bad.length / goodOnes)
  return bad.flatMap((row, i) => {
    const beside = i % every === 0 ? good[i / every] : undefined
    return beside === undefined ? [row] : [beside, row]
  })
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bad-files-'))
  for (const part of ['files', 'disk']) await mkdir(join(folder, part))
  photos = openPhotoStore(join(folder, 'catalogue'))
  rows = await withGoodOnes(await writeRows())
  const layout = layoutById('i4-1342')
  if (!layout) throw new Error('no such layout')
  const now = () => '2026-03-02T09:14:00Z'
  const start = { id: 'job', trayId: 'tray', now: now(), complaint: '', engine: { vehicle: '' } }
  const before = process.memoryUsage().rss
  peak = 0
  const watch = setInterval(() => (peak = Math.max(peak, process.memoryUsage().rss - before)), 10)
  const began = performance.now()
  let id = 0
  result = await takeIn({
    files: rows,
    job: newJob({ ...start, layout }),
    photos,
    newId: () => `s${++id}`,
    now,
  })
  seconds = (performance.now() - began) / 1000
  clearInterval(watch)
}, 280_000)

afterAll(async () => {
  await photos.close()
  await closeSocket()
  await rm(folder, { recursive: true, force: true })
})

const outcomeOf = (row: Row) => result.outcomes[rows.indexOf(row)]

describe('bad files', () => {
  it('are well over forty kinds, each with an outcome', () => {
    expect(rows.length - goodOnes).toBeGreaterThan(150)
    expect(result.outcomes).toHaveLength(rows.length)
    const skipped = rows.filter(row => row.skip !== undefined)
    console.log(`${rows.length - goodOnes} bad files, ${skipped.length} not tried here`)
    for (const row of skipped) console.log(`not tried: ${row.what}: ${row.skip}`)
  })

  it('each give the line, or go in, as the table says', () => {
    const wrong = rows
      .filter(row => row.skip === undefined)
      .flatMap(row => {
        const outcome = outcomeOf(row)
        if (outcome === undefined) return [`${row.what}: no outcome`]
        if ('refused' in row.expected) {
          if (outcome.outcome !== 'refused') return [`${row.what}: ${outcome.outcome}, should be refused`]
          return row.expected.refused.test(outcome.why) ? [] : [`${row.what}: ${outcome.why}`]
        }
        if (outcome.outcome !== 'added') return [`${row.what}: ${JSON.stringify(outcome)}, should go in`]
        const shot = result.shots.find(one => one.photo === outcome.photo)
        const wanted = { format: row.expected.added, ...row.expected.shot }
        const differs = Object.entries(wanted).filter(
          ([key, value]) => shot?.[key as keyof typeof shot] !== value,
        )
        return differs.length === 0
          ? []
          : [`${row.what}: ${JSON.stringify(shot)} is not ${JSON.stringify(wanted)}`]
      })
    expect(wrong).toEqual([])
  })

  it('give exactly one line each, without a path, a control character or a stack', () => {
    for (const outcome of result.outcomes) {
      const line = outcome.outcome === 'refused' ? outcome.why : ''
      expect(line).not.toMatch(/[\n\r]|\p{Cc}|at .*:\d+/u)
      expect(line).not.toContain(folder)
      expect(line.length).toBeLessThan(200)
    }
  })

  it('keep none of the good ones out', async () => {
    const good = rows.filter(row => row.name.startsWith('good-'))
    expect(good).toHaveLength(goodOnes)
    for (const row of good) expect(outcomeOf(row)?.outcome).toBe('added')
  })

  it('leave shots that fit the schema, whose originals and both sizes are there', async () => {
    for (const shot of result.shots) {
      expect(shotSchema.safeParse(shot).success).toBe(true)
      expect((await photos.open(shot.photo)).bytes.length).toBe(shot.bytes)
      expect(await photos.hasSizes(shot.photo)).toBe(true)
    }
  })

  it('leave nothing of themselves in the catalogue', async () => {
    const kept = await readdir(join(folder, 'catalogue'), { recursive: true, withFileTypes: true })
    const files = kept.filter(entry => entry.isFile())
    expect(files.filter(entry => entry.name.endsWith('.tmp'))).toEqual([])
    expect(files).toHaveLength(result.shots.length * 3)
  })

  it('take neither long nor much memory', () => {
    console.log(
      `${rows.length} files in ${seconds.toFixed(1)} s, ${Math.round(peak / mebibyte)} MiB at the peak`,
    )
    expect(seconds).toBeLessThan(120)
    expect(peak).toBeLessThan(1024 * mebibyte)
  })
})

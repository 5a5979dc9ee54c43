// A check finds every kind of trouble, finds none in a whole catalogue, and mends only what can be made anew.
import { createHash } from 'node:crypto'
import { cp, mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { CatalogueProblem } from '../../../shared/contract/task-schema.ts'
import { faultOf, jobCalled, open, saveAgain, withPhoto } from '../../../tests/faults/storage/example.ts'
import { jpegBytes } from '../../../tests/fixtures/images/pictures.ts'
import { checkCatalogue } from './check.ts'
import { sealed } from './content-hash.ts'
import { indexVersion } from './index-shards.ts'

let place = ''
let folder = ''
let photo = ''
let spare = ''

beforeAll(async () => {
  place = await mkdtemp(join(tmpdir(), 'plugtray-check-'))
  const catalogue = await open(join(place, 'whole'))
  const put = async (seed: number) => {
    const bytes = await jpegBytes(seed)
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    await catalogue.photos.put(bytes, sha256, 'jpeg')
    await catalogue.photos.derived(sha256, 'thumb')
    return { sha256, bytes: bytes.length }
  }
  const shown = await put(1)
  photo = shown.sha256
  await catalogue.save(withPhoto(jobCalled('a'), photo, shown.bytes))
  await saveAgain(catalogue, 'a', 'changed')
  await catalogue.save(jobCalled('b', 'of April', 4))
  // Shown only by a job in the trash, and only by an earlier version of it.
  const trashed = await put(2)
  spare = trashed.sha256
  const job = await catalogue.save(withPhoto(jobCalled('gone'), spare, trashed.bytes))
  await catalogue.save({ ...jobCalled('gone'), ...(job.rev === undefined ? {} : { rev: job.rev }) })
  await catalogue.remove('gone')
  await catalogue.settings.set({ ...catalogue.settings.get(), technician: 'Ana' })
  await catalogue.close()
})
afterAll(() => rm(place, { recursive: true, force: true }))
beforeEach(async () => {
  folder = join(place, 'tried')
  await cp(join(place, 'whole'), folder, { recursive: true, preserveTimestamps: true })
  // A copy has other file numbers, so its index is made anew once.
  await (await open(folder)).close()
})
afterEach(() => rm(folder, { recursive: true, force: true }))

const at = (...parts: string[]) => join(folder, ...parts)
const photoAt = (sha256: string) => at('photos', sha256.slice(0, 2), `${sha256}.jpg`)
const problemsOf = async (mend = false) =>
  (await checkCatalogue(folder, { mend })).problems.map(({ file, kind }) => [file, kind])

describe('a check', () => {
  it('finds nothing in a whole catalogue, counts, and tells its progress to the end', async () => {
    const steps: [number, number][] = []
    const report = await checkCatalogue(folder, {
      mend: false,
      onProgress: (done, total) => steps.push([done, total]),
    })
    expect(report).toMatchObject({ jobs: 2, photos: 2, problems: [] })
    expect(report.bytesRead).toBeGreaterThan(1_000)
    expect(steps.map(([done]) => done)).toEqual(steps.map((_, i) => i + 1))
    expect(steps.at(-1)).toEqual([steps.length, steps.length])
  })

  type Trouble = [
    name: string,
    make: () => Promise<unknown>,
    file: () => string,
    kind: CatalogueProblem['kind'],
  ]
  const troubles: Trouble[] = [
    [
      'an altered job',
      () => writeFile(at('jobs/a/job.json'), '{"rev":1}'),
      () => 'jobs/a/job.json',
      'damaged',
    ],
    [
      'an altered version',
      () => writeFile(at('jobs/a/job.1.json'), ''),
      () => 'jobs/a/job.1.json',
      'damaged',
    ],
    [
      'an altered job in the trash',
      () => writeFile(at('trash/gone/job.json'), ''),
      () => 'trash/gone/job.json',
      'damaged',
    ],
    [
      'a job of a newer version',
      () => writeFile(at('jobs/a/job.json'), '{"schemaVersion":9}'),
      () => 'jobs/a/job.json',
      'newer version',
    ],
    ['a job without its file', () => rm(at('jobs/a/job.json')), () => 'jobs/a/job.json', 'missing'],
    [
      'a copied job folder',
      () => cp(at('jobs/a'), at('jobs/copy'), { recursive: true }),
      () => 'jobs/copy/job.json',
      'foreign',
    ],
    ['a file among the jobs', () => writeFile(at('jobs/notes.txt'), ''), () => 'jobs/notes.txt', 'foreign'],
    [
      'a conflict copy',
      () => writeFile(at('jobs/a/job (1).json'), ''),
      () => 'jobs/a/job (1).json',
      'foreign',
    ],
    ['a folder of no job', () => mkdir(at('jobs/not a job')), () => 'jobs/not a job', 'foreign'],
    ['a job that was only begun', () => mkdir(at('jobs/begun')), () => 'jobs/begun', 'left-over'],
    [
      'half a job',
      () => writeFile(at('jobs/a/job.json.0123456789ab.tmp'), ''),
      () => 'jobs/a/job.json.0123456789ab.tmp',
      'left-over',
    ],
    [
      'half a photo',
      () => writeFile(at('photos', `${photo}.0123456789ab.tmp`), ''),
      () => `photos/${photo}.0123456789ab.tmp`,
      'left-over',
    ],
    [
      'half an index',
      () => writeFile(at('index/2026-03.json.0123456789ab.tmp'), ''),
      () => 'index/2026-03.json.0123456789ab.tmp',
      'left-over',
    ],
    [
      'a foreign file in the index',
      () => writeFile(at('index/old.json'), ''),
      () => 'index/old.json',
      'foreign',
    ],
    [
      'a foreign file in the catalogue',
      () => writeFile(at('settings (1).json'), ''),
      () => 'settings (1).json',
      'foreign',
    ],
    ['altered settings', () => writeFile(at('settings.json'), '{}'), () => 'settings.json', 'damaged'],
    [
      'settings of a newer version',
      () => writeFile(at('settings.json'), '{"schemaVersion":9}'),
      () => 'settings.json',
      'newer version',
    ],
    ['altered layouts', () => writeFile(at('layouts.json'), '['), () => 'layouts.json', 'damaged'],
    ['a lost mark', () => rm(at('catalogue.json')), () => 'catalogue.json', 'missing'],
    ['an altered mark', () => writeFile(at('catalogue.json'), 'x'), () => 'catalogue.json', 'damaged'],
    [
      'an altered photo',
      () => writeFile(photoAt(photo), 'other bytes'),
      () => `photos/${photo.slice(0, 2)}/${photo}.jpg`,
      'damaged',
    ],
    ['a lost photo', () => rm(photoAt(photo)), () => `photos/${photo.slice(0, 2)}/${photo}`, 'missing'],
    [
      'a photo under another name',
      () => rename(photoAt(photo), at('photos', photo.slice(0, 2), 'plug.jpg')),
      () => `photos/${photo.slice(0, 2)}/plug.jpg`,
      'foreign',
    ],
    [
      'a photo that no job shows',
      () => rm(at('trash/gone'), { recursive: true }),
      () => `photos/${spare.slice(0, 2)}/${spare}.jpg`,
      'not named by any job',
    ],
    ['a lost shard', () => rm(at('index/2026-04.json')), () => 'index/2026-04.json', 'stale index'],
    [
      'a torn shard',
      () => writeFile(at('index/2026-04.json'), '{'),
      () => 'index/2026-04.json',
      'stale index',
    ],
    [
      'a shard of a newer version',
      () =>
        writeFile(
          at('index/2026-04.json'),
          JSON.stringify(sealed({ indexVersion: indexVersion + 1, rev: 1 })),
        ),
      () => 'index/2026-04.json',
      'newer version',
    ],
  ]
  it.each(troubles)('finds %s', async (_, make, file, kind) => {
    await make()
    expect(await problemsOf()).toContainEqual([file(), kind])
  })

  it('leaves everything as it is unless it is to mend', async () => {
    await writeFile(at('jobs/a/job.json'), 'torn')
    await rm(at('index/2026-04.json'))
    await rm(at('derived'), { recursive: true })
    const before = await readdir(folder, { recursive: true })
    await checkCatalogue(folder, { mend: false })
    expect(await readdir(folder, { recursive: true })).toEqual(before)
  })

  it('mends the index and the derived pictures, byte for byte the same answers, and no evidence', async () => {
    const catalogue = await open(folder)
    const listed = catalogue.list()
    const thumb = await catalogue.photos.derived(photo, 'thumb')
    await catalogue.close()
    const thumbBytes = 'path' in thumb ? await readFile(thumb.path) : thumb.bytes
    await rm(at('index'), { recursive: true })
    await mkdir(at('index'))
    await rm(at('derived'), { recursive: true })
    await writeFile(at('trash/gone/job.1.json'), 'torn')
    const report = await checkCatalogue(folder, { mend: true })
    expect(report.problems.filter(({ mended }) => !mended).map(({ file }) => file)).toEqual([
      'trash/gone/job.1.json',
      `photos/${spare.slice(0, 2)}/${spare}.jpg`,
    ])
    expect(await readFile(at('trash/gone/job.1.json'), 'utf8')).toBe('torn')
    const again = await open(folder)
    expect(again.list().toSorted((a, b) => (a.id < b.id ? -1 : 1))).toEqual(
      listed.toSorted((a, b) => (a.id < b.id ? -1 : 1)),
    )
    const remade = await again.photos.derived(photo, 'thumb')
    expect('path' in remade ? await readFile(remade.path) : remade.bytes).toEqual(thumbBytes)
    await again.close()
    expect((await problemsOf(true)).map(([file]) => file)).toEqual([
      'trash/gone/job.1.json',
      `photos/${spare.slice(0, 2)}/${spare}.jpg`,
    ])
  })

  it('keeps the last summary of a job that is damaged, so that it is not forgotten', async () => {
    await writeFile(at('jobs/b/job.json'), 'torn')
    await checkCatalogue(folder, { mend: true })
    const catalogue = await open(folder)
    expect(
      catalogue
        .list()
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual(['a', 'b'])
    expect(catalogue.unreadable.map(({ id }) => id)).toEqual(['b'])
    expect((await faultOf(() => catalogue.load('b')))?.code).toBe('DAMAGED')
    await catalogue.close()
  })

  it('stops when it is cancelled', async () => {
    const stop = new AbortController()
    const checking = checkCatalogue(folder, {
      mend: true,
      signal: stop.signal,
      onProgress: () => stop.abort(),
    })
    await expect(checking).rejects.toThrow('aborted')
  })

  it('of a folder that is no catalogue says so', async () => {
    expect((await faultOf(() => checkCatalogue(join(place, 'nowhere'), { mend: true })))?.code).toBe(
      'NOT_FOUND',
    )
  })

  it('of a catalogue in use takes no change under way for trouble', async () => {
    const catalogue = await open(folder)
    const stop = new AbortController()
    const editing = (async () => {
      for (let number = 0; !stop.signal.aborted; number += 1)
        await saveAgain(catalogue, 'a', `change ${number}`)
    })()
    for (let round = 0; round < 5; round += 1)
      expect((await catalogue.check({ mend: round % 2 === 1 })).problems).toEqual([])
    stop.abort()
    await editing
    await catalogue.close()
  })
})

import { createHash } from 'node:crypto'
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { layoutById } from '../../../shared/engine/layouts.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { newJob } from '../../../shared/job/new-job.ts'
import { shotSchema } from '../../../shared/job/tray-schema.ts'
import { jpegBytes, picture } from '../../../tests/fixtures/images/pictures.ts'
import { FaultError } from '../fault.ts'
import { realDisk } from '../store/disk.ts'
import { openPhotoStore, type PhotoStore } from '../store/photos.ts'
import { takeIn } from './intake.ts'

const now = () => '2026-03-02T09:14:00Z'
let folder: string
let catalogue: string
let photos: PhotoStore
let job: Job

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

async function put(name: string, bytes: Uint8Array): Promise<{ path: string; name: string }> {
  const path = join(folder, name)
  await writeFile(path, bytes)
  return { path, name }
}

function ids(): () => string {
  let last = 0
  return () => `shot-${++last}`
}

const filesUnder = async (at: string): Promise<string[]> =>
  (await readdir(at, { recursive: true, withFileTypes: true })).filter(e => e.isFile()).map(e => e.name)

beforeAll(() => {
  const layout = layoutById('i4-1342')
  if (layout === undefined || layout === null) throw new Error('no such layout')
  job = newJob({
    id: 'job-1',
    trayId: 'tray-1',
    now: now(),
    complaint: '',
    engine: { vehicle: 'invented' },
    layout,
  })
})

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'intake-'))
  catalogue = join(folder, 'catalogue')
  photos = openPhotoStore(catalogue)
  return async () => {
    await photos.close()
    await rm(folder, { recursive: true })
  }
})

describe('takeIn', () => {
  it('stores originals byte for byte and answers in the order of the files', async () => {
    const sources = await Promise.all([1, 2, 3, 4, 5].map(seed => jpegBytes(seed)))
    const files = await Promise.all(sources.map((bytes, i) => put(`IMG_${i}.jpg`, bytes)))
    const { shots, outcomes } = await takeIn({ files, job, photos, newId: ids(), now })
    expect(outcomes).toEqual(
      sources.map((bytes, i) => ({ outcome: 'added', file: `IMG_${i}.jpg`, photo: sha256(bytes) })),
    )
    expect(shots.map(shot => shot.fileName)).toEqual(files.map(file => file.name))
    for (const [i, shot] of shots.entries()) {
      expect(shotSchema.parse(shot)).toEqual(shot)
      const stored = await photos.find(shot.photo)
      expect(await readFile(stored.path)).toEqual(sources[i])
    }
    const kept = await filesUnder(catalogue)
    expect(kept.filter(name => name.endsWith('.tmp'))).toEqual([])
    expect(kept).toHaveLength(15)
  })

  it('keeps the time as written, the upright size and the name of the profile', async () => {
    const takenAt = { time: '2026:03:02 09:14:00', subSec: '045', offset: '+02:00' }
    const bytes = await jpegBytes(1, { width: 90, height: 60, takenAt, orientation: 6, profile: 'p3' })
    const { shots } = await takeIn({ files: [await put('a.jpg', bytes)], job, photos, newId: ids(), now })
    expect(shots[0]).toEqual({
      id: 'shot-1',
      photo: sha256(bytes),
      format: 'jpeg',
      fileName: 'a.jpg',
      bytes: bytes.length,
      width: 60,
      height: 90,
      profile: expect.stringMatching(/p3/i),
      takenAt: { local: '2026-03-02T09:14:00', subSec: '045', offset: '+02:00' },
      addedAt: now(),
      kind: 'end-on',
    })
  })

  it('reports the same bytes once more as a duplicate, of this import and of the job', async () => {
    const [a, b] = [await jpegBytes(1), await jpegBytes(2)]
    const first = await takeIn({ files: [await put('old.jpg', a)], job, photos, newId: ids(), now })
    const [tray, ...others] = job.trays
    if (tray === undefined) throw new Error('no tray')
    const withShot = { ...job, trays: [{ ...tray, unsorted: first.shots }, ...others] }
    const files = await Promise.all([
      put('b1.jpg', b),
      put('again.jpg', a),
      put('b2.jpg', b),
      put('b3.jpg', b),
    ])
    const { shots, outcomes } = await takeIn({ files, job: withShot, photos, newId: ids(), now })
    expect(shots.map(shot => shot.fileName)).toEqual(['b1.jpg'])
    expect(outcomes).toEqual([
      { outcome: 'added', file: 'b1.jpg', photo: sha256(b) },
      { outcome: 'duplicate', file: 'again.jpg', photo: sha256(a), of: 'old.jpg' },
      { outcome: 'duplicate', file: 'b2.jpg', photo: sha256(b), of: 'b1.jpg' },
      { outcome: 'duplicate', file: 'b3.jpg', photo: sha256(b), of: 'b1.jpg' },
    ])
  })

  it('refuses bad files one by one and takes in the others', async () => {
    const good = await jpegBytes(1)
    const files = [
      await put('good.jpg', good),
      await put('half.jpg', good.subarray(0, good.length / 2)),
      await put('notes.jpg', Buffer.from('cylinder 3 was wet')),
      await put('other.png', await picture(2).png().toBuffer()),
      { path: join(folder, 'gone.jpg'), name: 'gone.jpg' },
    ]
    const { shots, outcomes } = await takeIn({ files, job, photos, newId: ids(), now })
    expect(outcomes.map(outcome => outcome.outcome)).toEqual([
      'added',
      'refused',
      'refused',
      'added',
      'refused',
    ])
    expect(outcomes.flatMap(outcome => (outcome.outcome === 'refused' ? [outcome.why] : []))).toEqual([
      'This JPEG is cut short: part of the picture is missing. Copy it from the camera or phone again.',
      'This is a text file. Add photos as JPEG, PNG, WebP, TIFF, AVIF or HEIC.',
      'The file is not there any more. It may have been moved or deleted; add it from where it is now.',
    ])
    expect(shots).toHaveLength(2)
    expect(await filesUnder(catalogue)).toHaveLength(6)
  })

  it('tells how far it is', async () => {
    const files = await Promise.all([1, 2, 3].map(async seed => put(`${seed}.jpg`, await jpegBytes(seed))))
    const seen: string[] = []
    const onProgress = (p: { done: number; total: number; what: string }) =>
      seen.push(`${p.done}/${p.total} ${p.what}`)
    await takeIn({ files, job, photos, newId: ids(), now }, { onProgress })
    expect(seen.map(line => line.slice(0, 3))).toEqual(['1/3', '2/3', '3/3'])
    expect(seen.map(line => line.slice(4)).sort()).toEqual(['1.jpg', '2.jpg', '3.jpg'])
  })

  it('hands out nothing when cancelled, and leaves no temporary file', async () => {
    const files = await Promise.all(
      Array.from({ length: 12 }, async (_, seed) => put(`${seed}.jpg`, await jpegBytes(seed))),
    )
    const stop = new AbortController()
    const reason = new Error('cancelled by the person')
    const onProgress = ({ done }: { done: number }) => {
      if (done === 3) stop.abort(reason)
    }
    const importing = takeIn({ files, job, photos, newId: ids(), now }, { signal: stop.signal, onProgress })
    await expect(importing).rejects.toBe(reason)
    const kept = await filesUnder(catalogue)
    expect(kept.filter(name => name.endsWith('.tmp'))).toEqual([])
    expect(kept.filter(name => /^[0-9a-f]{64}\.jpg$/.test(name)).length).toBeLessThan(12)
  })

  it('fails as a whole when the disk is full, and works once there is room', async () => {
    let full = true
    const enospc = () => Object.assign(new Error('no space left'), { code: 'ENOSPC' })
    const disk = {
      ...realDisk,
      create: (path: string) => (full ? Promise.reject(enospc()) : realDisk.create(path)),
    }
    const store = openPhotoStore(catalogue, disk)
    const files = [await put('a.jpg', await jpegBytes(1)), await put('b.jpg', await jpegBytes(2))]
    const request = { files, job, photos: store, newId: ids(), now }
    const failure: unknown = await takeIn(request).catch((error: unknown) => error)
    expect(failure).toBeInstanceOf(FaultError)
    expect(failure instanceof FaultError && failure.code).toBe('DISK')
    full = false
    expect((await takeIn(request)).shots).toHaveLength(2)
    await store.close()
  })

  it('puts a damaged original right when the same photo is added again', async () => {
    const bytes = await jpegBytes(1)
    const files = [await put('a.jpg', bytes)]
    const first = await takeIn({ files, job, photos, newId: ids(), now })
    const photo = first.shots[0]?.photo ?? ''
    const { path } = await photos.find(photo)
    await writeFile(path, bytes.subarray(0, 100))
    await expect(photos.open(photo)).rejects.toMatchObject({ code: 'DAMAGED' })
    await takeIn({ files, job, photos, newId: ids(), now })
    expect((await photos.open(photo)).bytes).toEqual(bytes)
  })
})

// Verifies a catalogue: every document, every photo, the index. It can rebuild what is derived; evidence it never touches.
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import type { CatalogueProblem, CheckReport } from '../../../shared/contract/task-schema.ts'
import { photosOf } from '../../../shared/job/current.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { FaultError } from '../fault.ts'
import { type Disk, realDisk } from './disk.ts'
import { isLeftOver } from './durable-file.ts'
import { type IndexEntry, readShards, sameStamp, shardOf, writeShards } from './index-shards.ts'
import { readStoredJob } from './job-file.ts'
import { openPhotoStore } from './photos.ts'
import { summaryOf } from './summary-of.ts'
import { RefusedPicture } from '../imaging/refused-picture.ts'

export type CheckOptions = {
  /** Rebuild the index and the derived pictures. The caller holds the lock. */
  mend: boolean
  signal?: AbortSignal
  onProgress?: (done: number, total: number, what: string) => void
  disk?: Disk
}

const photoFile = /^([0-9a-f]{64})\.(jpg|png|webp|avif|tif|heic)$/

export async function checkCatalogue(folder: string, options: CheckOptions): Promise<CheckReport> {
  const disk = options.disk ?? realDisk
  const at = (...parts: string[]) => join(folder, ...parts)
  if (!(await disk.isFolder(at('jobs'))))
    throw new FaultError('NOT_FOUND', {
      what: 'There is no catalogue here.',
      where: folder,
      hint: 'Name the catalogue folder.',
    })
  const problems: CatalogueProblem[] = []
  const report = { jobs: 0, photos: 0, bytesRead: 0 }
  const say = (file: string, kind: CatalogueProblem['kind'], what: string, hint: string, mended = false) =>
    problems.push({ file, kind, what, hint, mended })
  const listed = async (name: string) => ((await disk.isFolder(at(name))) ? disk.list(at(name)) : [])

  const ids = await listed('jobs')
  const photoFolders = await listed('photos')
  const total = ids.length + photoFolders.length
  let done = 0
  const step = (what: string) => {
    options.signal?.throwIfAborted()
    done += 1
    options.onProgress?.(done, total, what)
  }

  const jobs = new Map<string, { job: Job; entry: IndexEntry }>()
  for (const id of ids) {
    const name = `jobs/${id}/job.json`
    const stamp = await disk.stamp(at('jobs', id, 'job.json'))
    if (!(await disk.isFolder(at('jobs', id)))) {
      say(`jobs/${id}`, 'foreign', 'This file does not belong here.', 'Move it out of the catalogue.')
    } else if (stamp) {
      const bytes = await disk.read(at('jobs', id, 'job.json'))
      report.bytesRead += bytes.length
      report.jobs += 1
      try {
        const job = readStoredJob(bytes, name)
        if (job.id !== id)
          say(
            name,
            'foreign',
            `The folder holds job ${job.id}.`,
            'It may be a copy: move it out of the catalogue.',
          )
        else jobs.set(id, { job, entry: { summary: summaryOf(job), file: stamp } })
      } catch (error) {
        if (!(error instanceof FaultError)) throw error
        say(
          name,
          error.code === 'NEWER_VERSION' ? 'newer version' : 'damaged',
          error.fault.what,
          error.fault.hint,
        )
      }
    } else say(name, 'missing', 'The folder of this job holds no job file.', 'Restore it from a backup.')
    for (const file of (await disk.isFolder(at('jobs', id))) ? await disk.list(at('jobs', id)) : [])
      if (isLeftOver(file))
        say(
          `jobs/${id}/${file}`,
          'left-over',
          'A write was interrupted here.',
          'It goes away at the next start.',
        )
    step(name)
  }

  const named = new Map<string, string>()
  for (const { job } of jobs.values()) for (const photo of photosOf(job)) named.set(photo, job.id)
  const trashed = await trashPhotos(disk, folder)
  const found = new Map<string, string>()
  const healthy = new Set<string>()
  for (const part of photoFolders) {
    for (const file of (await disk.isFolder(at('photos', part))) ? await disk.list(at('photos', part)) : []) {
      const name = `photos/${part}/${file}`
      const sha256 = photoFile.exec(file)?.[1]
      if (isLeftOver(file)) {
        say(name, 'left-over', 'A write was interrupted here.', 'It can be deleted.')
      } else if (!sha256 || !sha256.startsWith(part))
        say(name, 'foreign', 'This file does not belong here.', 'Move it out of the catalogue.')
      else {
        const bytes = await disk.read(at('photos', part, file))
        report.bytesRead += bytes.length
        report.photos += 1
        found.set(sha256, name)
        if (createHash('sha256').update(bytes).digest('hex') !== sha256)
          say(name, 'damaged', 'The photo does not match its hash.', 'Restore the file from a backup.')
        else healthy.add(sha256)
        if (!named.has(sha256) && !trashed.has(sha256))
          say(
            name,
            'not named by any job',
            'No job shows this photo (its import was cancelled, or it was taken out).',
            'It can be deleted.',
          )
      }
    }
    step(`photos/${part}`)
  }
  for (const [photo, job] of named)
    if (!found.has(photo))
      say(
        `photos/${photo.slice(0, 2)}/${photo}`,
        'missing',
        `Job ${job} shows a photo that is not there.`,
        'Restore the file from a backup.',
      )

  await checkIndex()
  if (options.mend) await mendDerived()
  return { ...report, problems }

  async function checkIndex(): Promise<void> {
    const shards = await readShards(disk, at('index'))
    const stale = new Set<string>(shards.unreadable)
    for (const [id, { entry }] of jobs) {
      const known = shards.entries.get(id)
      if (
        !known ||
        !sameStamp(known.file, entry.file) ||
        JSON.stringify(known.summary) !== JSON.stringify(entry.summary)
      )
        stale.add(shardOf(entry.summary))
    }
    for (const [id, entry] of shards.entries) if (!jobs.has(id)) stale.add(shardOf(entry.summary))
    if (stale.size > 0 && options.mend)
      await writeShards(disk, at('index'), new Map([...jobs].map(([id, { entry }]) => [id, entry])), stale)
    for (const name of stale)
      say(
        `index/${name}`,
        'stale index',
        'The list does not match the jobs.',
        'It is rebuilt at the next start.',
        options.mend,
      )
  }

  /** Pictures of damaged or vanished photos go; missing ones are made again. */
  async function mendDerived(): Promise<void> {
    const photos = openPhotoStore(folder, disk)
    try {
      for (const part of await listed('derived'))
        for (const file of await disk.list(at('derived', part)))
          if (!healthy.has(file.slice(0, 64))) await disk.remove(at('derived', part, file))
      for (const sha256 of healthy) {
        options.signal?.throwIfAborted()
        if (await photos.hasSizes(sha256)) continue
        const { bytes } = await photos.open(sha256)
        try {
          await photos.putSizes(sha256, await photos.imaging.sizes(bytes, await photos.imaging.header(bytes)))
          say(`derived/${sha256.slice(0, 2)}/${sha256}`, 'missing', 'Small pictures were missing.', '', true)
        } catch (error) {
          if (!(error instanceof RefusedPicture)) throw error
          say(
            found.get(sha256) ?? sha256,
            'damaged',
            error.why,
            'The original is unchanged, but cannot be shown.',
          )
        }
      }
    } finally {
      await photos.close()
    }
  }
}

/** Photos that jobs in the trash still name: they come back with the job. */
async function trashPhotos(disk: Disk, folder: string): Promise<Set<string>> {
  const photos = new Set<string>()
  const trash = join(folder, 'trash')
  for (const id of (await disk.isFolder(trash)) ? await disk.list(trash) : []) {
    try {
      const job = readStoredJob(await disk.read(join(trash, id, 'job.json')), `trash/${id}/job.json`)
      for (const photo of photosOf(job)) photos.add(photo)
    } catch {
      // A damaged job in the trash names nothing for certain; its photos are then reported, never removed.
    }
  }
  return photos
}

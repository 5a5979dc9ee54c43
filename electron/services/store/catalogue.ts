// The catalogue folder: jobs, their index, trash, settings, own layouts and photos, behind one lock.
import { join } from 'node:path'
import { Low } from 'lowdb'
import type { Settings } from '../../../shared/contract/settings-schema.ts'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { FaultError } from '../fault.ts'
import { type Disk, type FileStamp, realDisk } from './disk.ts'
import { diskFault, onDisk } from './disk-fault.ts'
import { makeFolders, removeLeftOvers } from './durable-file.ts'
import { type IndexEntry, readShards, sameStamp, shardOf, writeShards } from './index-shards.ts'
import { jobBytes, readStoredJob, stampJob } from './job-file.ts'
import { DurableJsonAdapter } from './json-adapter.ts'
import { type Lock, takeLock } from './lock.ts'
import { openPhotoStore, type PhotoStore } from './photos.ts'
import { openOwnLayouts, openSettings, type SmallDocument } from './small-documents.ts'
import { summaryOf } from './summary-of.ts'

export type CatalogueChange = { kind: 'job'; id: string; rev: number } | { kind: 'removed'; id: string }

export type Catalogue = {
  folder: string
  /** Why changes are refused, or null when this process may write. */
  readOnly: string | null
  /** The folder held no catalogue before. */
  isNew: boolean
  list: () => JobSummary[]
  has: (id: string) => boolean
  /** Reads and verifies a job from disk. */
  load: (id: string) => Promise<Job>
  /** Durable when it returns: the job with its new revision and hash. */
  save: (job: Job) => Promise<Job>
  /** To the trash. */
  remove: (id: string) => Promise<void>
  restore: (id: string) => Promise<Job>
  settings: SmallDocument<Settings>
  layouts: SmallDocument<Layout[]>
  photos: PhotoStore
  /** Jobs that could not be read when the catalogue was opened. */
  unreadable: { id: string; error: unknown }[]
  onChange: (listener: (change: CatalogueChange) => void) => () => void
  close: () => Promise<void>
}

export type OpenOptions = { appVersion: string; disk?: Disk; now?: () => Date }

const indexPauseMs = 300
const jobName = (id: string): string => `jobs/${id}/job.json`

/** Opens a catalogue, making it if the folder is new; held by another process it opens for reading only. */
export async function openCatalogue(folder: string, options: OpenOptions): Promise<Catalogue> {
  const disk = options.disk ?? realDisk
  const at = (...parts: string[]) => join(folder, ...parts)
  let lock: Lock | undefined
  let readOnly: string | null = null
  let isNew = false
  try {
    isNew = !(await disk.isFolder(at('jobs')))
    for (const part of ['jobs', 'index', 'trash', 'photos', 'derived']) await makeFolders(disk, at(part))
    const attempt = await takeLock(disk, folder, options.appVersion, options.now)
    if ('lock' in attempt) lock = attempt.lock
    else readOnly = attempt.heldBy
  } catch (error) {
    throw diskFault(error, 'the catalogue folder')
  }
  const writable = () => {
    if (readOnly !== null)
      throw new FaultError('READ_ONLY', {
        what: 'The catalogue can only be read here.',
        where: '',
        hint: readOnly,
      })
  }

  if (lock) for (const part of ['.', 'index', 'photos']) await removeLeftOvers(disk, at(part))
  const entries = new Map<string, IndexEntry>()
  const unreadable: { id: string; error: unknown }[] = []
  const dirty = new Set<string>()
  await onDisk('index', () => readIndex())

  async function readIndex(): Promise<void> {
    const shards = await readShards(disk, at('index'))
    for (const name of shards.unreadable) dirty.add(name)
    const ids = await disk.list(at('jobs'))
    const check = async (id: string) => {
      const stamp = await disk.stamp(at('jobs', id, 'job.json'))
      const known = shards.entries.get(id)
      if (stamp && known && sameStamp(stamp, known.file)) {
        entries.set(id, known)
        return
      }
      if (known) dirty.add(shardOf(known.summary))
      if (!stamp) return
      if (lock) await removeLeftOvers(disk, at('jobs', id))
      try {
        remember(readStoredJob(await disk.read(at('jobs', id, 'job.json')), jobName(id)), stamp)
      } catch (error) {
        unreadable.push({ id, error })
      }
    }
    // A few at once: two thousand looks at the disk in a row would be felt.
    const queue = ids.values()
    await Promise.all(
      Array.from({ length: 16 }, async () => {
        for (const id of queue) await check(id)
      }),
    )
    for (const [id, entry] of shards.entries) if (!entries.has(id)) dirty.add(shardOf(entry.summary))
  }

  function remember(job: Job, file: FileStamp): void {
    const summary = summaryOf(job)
    entries.set(job.id, { summary, file })
    dirty.add(shardOf(summary))
  }

  // The index is written a moment after the job: it may be lost, the job may not.
  let timer: NodeJS.Timeout | undefined
  let writing: Promise<void> = Promise.resolve()
  const flushIndex = (): Promise<void> => {
    clearTimeout(timer)
    timer = undefined
    writing = writing.then(async () => {
      const names = new Set(dirty)
      dirty.clear()
      try {
        await writeShards(disk, at('index'), entries, names)
      } catch {
        // Tried again with the next change; a stale shard is found and mended when the catalogue is opened.
        for (const name of names) dirty.add(name)
      }
    })
    return writing
  }
  const indexLater = () => {
    if (lock) timer ??= setTimeout(() => void flushIndex(), indexPauseMs)
    timer?.unref()
  }
  if (dirty.size > 0) indexLater()

  const open = new Map<string, { low: Low<Job | null>; stamp: FileStamp | null; swept: boolean }>()
  const documentOf = (id: string) => {
    const known = open.get(id)
    if (known) return known
    const adapter = new DurableJsonAdapter<Job | null>({
      disk,
      path: at('jobs', id, 'job.json'),
      name: jobName(id),
      decode: bytes => readStoredJob(bytes, jobName(id)),
      encode: job => (job === null ? new Uint8Array() : jobBytes(job)),
    })
    const fresh = { low: new Low<Job | null>(adapter, null), stamp: null, swept: false }
    open.set(id, fresh)
    return fresh
  }
  const listeners = new Set<(change: CatalogueChange) => void>()
  const tell = (change: CatalogueChange) => {
    for (const listener of listeners) listener(change)
  }
  const stampOf = (id: string) => onDisk(jobName(id), () => disk.stamp(at('jobs', id, 'job.json')))

  const load = async (id: string): Promise<Job> => {
    const stamp = /^[A-Za-z0-9_-]{1,64}$/.test(id) ? await stampOf(id) : null
    if (!stamp)
      throw new FaultError('NOT_FOUND', {
        what: entries.has(id) ? 'The file of this job is missing.' : 'There is no such job.',
        where: `job ${id}`,
        hint: entries.has(id)
          ? 'Restore it from a backup, or run a check of the catalogue.'
          : 'It may have been deleted.',
      })
    const document = documentOf(id)
    document.low.data = null
    await document.low.read()
    document.stamp = stamp
    const job = document.low.data
    if (!job)
      throw new FaultError('NOT_FOUND', {
        what: 'The file of this job is missing.',
        where: `job ${id}`,
        hint: 'Run a check.',
      })
    return job
  }

  const save = async (job: Job): Promise<Job> => {
    writable()
    const document = documentOf(job.id)
    const before = await stampOf(job.id)
    if (before && document.stamp && !sameStamp(before, document.stamp))
      throw new FaultError('REFUSED', {
        what: 'The job file was changed by another program since it was opened.',
        where: jobName(job.id),
        hint: 'Open the job again; nothing was overwritten.',
      })
    const stamped = stampJob(job, (job.rev ?? 0) + 1)
    const last = document.low.data
    document.low.data = stamped
    try {
      await onDisk(jobName(job.id), async () => {
        await makeFolders(disk, at('jobs', job.id))
        // What an earlier process left half written goes before the first save of this one.
        if (!document.swept) await removeLeftOvers(disk, at('jobs', job.id))
        document.swept = true
      })
      await document.low.write()
    } catch (error) {
      document.low.data = last
      throw error
    }
    const file = await stampOf(job.id)
    document.stamp = file
    if (file) remember(stamped, file)
    indexLater()
    tell({ kind: 'job', id: job.id, rev: stamped.rev ?? 0 })
    return stamped
  }

  const move = async (id: string, from: string, to: string) => {
    await onDisk(`${from}/${id}`, async () => {
      await disk.rename(at(from, id), at(to, id))
      await disk.syncFolder(at(to))
      await disk.syncFolder(at(from))
    })
  }

  return {
    folder,
    readOnly,
    isNew,
    list: () => [...entries.values()].map(entry => entry.summary),
    has: id => entries.has(id),
    load,
    save,
    async remove(id) {
      writable()
      await load(id)
      if (await disk.isFolder(at('trash', id)))
        await onDisk(`trash/${id}`, () => disk.removeTree(at('trash', id)))
      await move(id, 'jobs', 'trash')
      const entry = entries.get(id)
      if (entry) dirty.add(shardOf(entry.summary))
      entries.delete(id)
      open.delete(id)
      indexLater()
      tell({ kind: 'removed', id })
    },
    async restore(id) {
      writable()
      if (!/^[A-Za-z0-9_-]{1,64}$/.test(id) || !(await disk.isFolder(at('trash', id))))
        throw new FaultError('NOT_FOUND', {
          what: 'This job is not in the trash.',
          where: `job ${id}`,
          hint: 'It may be restored already.',
        })
      await move(id, 'trash', 'jobs')
      const job = await load(id)
      const file = await stampOf(id)
      if (file) remember(job, file)
      indexLater()
      tell({ kind: 'job', id, rev: job.rev ?? 0 })
      return job
    },
    settings: await openSettings(disk, folder, writable),
    layouts: await openOwnLayouts(disk, folder, writable),
    photos: openPhotoStore(folder, disk, { readOnly: readOnly !== null }),
    unreadable,
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    async close() {
      if (lock && dirty.size > 0) await flushIndex()
      clearTimeout(timer)
      await writing
      await lock?.release()
      listeners.clear()
    },
  }
}

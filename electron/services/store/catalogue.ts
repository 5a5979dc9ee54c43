// The catalogue folder: jobs, their index, trash, settings, own layouts and photos, behind one lock.
import { join } from 'node:path'
import type { Settings } from '../../../shared/contract/settings-schema.ts'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import type { CheckReport } from '../../../shared/contract/task-schema.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { FaultError } from '../fault.ts'
import { type CheckOptions, checkCatalogue } from './check.ts'
import { type Disk, realDisk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { createDoubts } from './doubts.ts'
import { followWriter } from './follow-writer.ts'
import { jobChanges } from './job-changes.ts'
import { type ListChange, openJobIndex, type Unreadable } from './job-index.ts'
import { openJobStore } from './job-store.ts'
import { openFolder } from './open-folder.ts'
import { openPhotoStore, type PhotoStore } from './photos.ts'
import { openRecordingStore, type RecordingStore } from './recordings.ts'
import { openOwnLayouts, openSettings, type SmallDocument } from './small-documents.ts'
import { openTrash } from './trash.ts'

export type Catalogue = {
  folder: string
  /** Why changes are refused, or null when this process may write. */
  readonly readOnly: string | null
  /** The folder held no catalogue before. */
  isNew: boolean
  list: () => JobSummary[]
  has: (id: string) => boolean
  /** Reads and verifies a job from disk. */
  load: (id: string) => Promise<Job>
  /**
   * Durable when it returns: the job with its new revision and hash. The job given names the revision it was made from;
   * if the stored one is another by now the save is REFUSED and nothing is overwritten.
   */
  save: (job: Job) => Promise<Job>
  /** To the trash. A job of which only the index still knows is taken out of the list. */
  remove: (id: string) => Promise<void>
  restore: (id: string) => Promise<Job>
  settings: SmallDocument<Settings>
  layouts: SmallDocument<Layout[]>
  photos: PhotoStore
  recordings: RecordingStore
  /** Jobs that could not be read when they were last looked at. */
  readonly unreadable: readonly Unreadable[]
  /** Looks again at what a failing disk left in doubt. Done every second by itself as long as there is any. */
  settle: () => Promise<void>
  /** Verifies everything while the catalogue stays in use. Mends only where this process may write. */
  check: (options: Omit<CheckOptions, 'disk' | 'flushIndex'>) => Promise<CheckReport>
  onChange: (listener: (change: ListChange) => void) => () => void
  close: () => Promise<void>
}

export type OpenOptions = { appVersion: string; disk?: Disk; now?: () => Date }

/** Opens a catalogue, making it if the folder is new; held by another process it opens for reading only. */
export async function openCatalogue(folder: string, options: OpenOptions): Promise<Catalogue> {
  const disk = options.disk ?? realDisk
  const { lock, isNew, ...opened } = await openFolder(disk, folder, options.appVersion, options.now)
  let readOnly = opened.readOnly

  const writable = async () => {
    readOnly ??= (await lock?.lost()) ?? null
    if (readOnly !== null)
      throw new FaultError('READ_ONLY', {
        what: 'The catalogue can only be read here.',
        where: '',
        hint: readOnly,
      })
  }
  const index = openJobIndex(disk, folder, lock !== undefined)
  const jobs = openJobStore(disk, folder)
  const doubts = createDoubts()
  const listeners = new Set<(change: ListChange) => void>()
  const tell = (change: ListChange) => {
    for (const listener of listeners) listener(change)
  }
  try {
    await onDisk('index', () => index.scan(true))
    const place = { disk, folder, writable, doubts }
    const settings = await openSettings(place)
    const layouts = await openOwnLayouts(place)
    const changes = jobChanges({ index, jobs, trash: openTrash(disk, folder), doubts, writable, tell })
    const unfollow = lock ? () => {} : followWriter(disk, join(folder, 'index'), index, tell)

    return {
      folder,
      get readOnly() {
        return readOnly
      },
      isNew,
      list: index.list,
      has: index.has,
      load: async id => (await jobs.load(id)).job,
      save: changes.save,
      remove: changes.remove,
      restore: changes.restore,
      settings,
      layouts,
      photos: openPhotoStore(folder, disk, { readOnly: readOnly !== null }),
      recordings: openRecordingStore(folder, disk, () => readOnly),
      get unreadable() {
        return index.unreadable()
      },
      settle: doubts.settle,
      async check(asked) {
        await doubts.settle()
        await index.flush()
        const mend = asked.mend && readOnly === null
        const flushIndex = index.flush
        const report = await checkCatalogue(folder, { ...asked, mend, disk, flushIndex })
        // Files that came or went by hand while the catalogue was open are now known.
        if (asked.mend) for (const change of await onDisk('index', () => index.scan())) tell(change)
        return report
      },
      onChange(listener) {
        listeners.add(listener)
        return () => listeners.delete(listener)
      },
      async close() {
        unfollow()
        doubts.close()
        readOnly ??= 'The catalogue was closed.'
        await changes.settled()
        await index.close()
        await lock?.release()
        listeners.clear()
      },
    }
  } catch (error) {
    await lock?.release()
    throw error
  }
}

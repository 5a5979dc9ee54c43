// The job list in memory and its shards on disk. Built from the shards where they match the job files, else from the jobs.
import { join } from 'node:path'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { codeOf, diskFault } from './disk-fault.ts'
import { removeLeftOvers } from './durable-file.ts'
import { type IndexEntry, readShards } from './index-shards.ts'
import { indexWriter } from './index-writer.ts'
import { readStoredJob } from './job-file.ts'
import { type FiledJob, isJobId, jobName } from './job-store.ts'
import { sameStamp } from './same-stamp.ts'
import { summaryOf } from './summary-of.ts'

export type Unreadable = { id: string; error: unknown }
export type ListChange = { kind: 'job'; id: string; rev: number } | { kind: 'removed'; id: string }

export type JobIndex = {
  list: () => JobSummary[]
  has: (id: string) => boolean
  /** Jobs that could not be read at the last scan: those the index knew keep their last summary in the list. */
  unreadable: () => readonly Unreadable[]
  /** Looks at every job file; gives what changed against the list before. At the start it also sweeps left-overs. */
  scan: (atStart?: boolean) => Promise<ListChange[]>
  remember: (filed: FiledJob) => void
  drop: (id: string) => void
  /** Writes the shards that changed. */
  flush: () => Promise<void>
  close: () => Promise<void>
}

/** Two thousand looks at the disk in a row would be felt. */
const atOnce = 16

/** With `mayWrite` false nothing is written or swept. */
export function openJobIndex(disk: Disk, folder: string, mayWrite: boolean): JobIndex {
  const at = (...parts: string[]) => join(folder, ...parts)
  let entries = new Map<string, IndexEntry>()
  let unreadable: Unreadable[] = []
  const writer = indexWriter(disk, at('index'), mayWrite, () => entries.values())
  /** Jobs saved or removed while a scan runs: what the scan saw of them is old. */
  const overtaken = new Set<string>()

  async function look(id: string, known: IndexEntry | undefined, sweep: boolean): Promise<IndexEntry | null> {
    const place = at('jobs', id)
    if (!isJobId(id)) return null
    const names = await namesIn(place)
    if (names === null) {
      if (known) unreadable.push({ id, error: missing(id) })
      return known ?? null
    }
    const left = sweep ? await removeLeftOvers(disk, place, names) : names
    // A killed process got no further than the folder of a new job.
    if (left.length === 0 && sweep && !known) await disk.removeTree(place)
    const stamp = left.includes('job.json') ? await disk.stamp(join(place, 'job.json')) : null
    if (stamp && known && sameStamp(stamp, known.file)) return known
    if (!stamp) {
      if (left.length > 0 || known) unreadable.push({ id, error: missing(id) })
      return known ?? null
    }
    try {
      const job = readStoredJob(await disk.read(join(place, 'job.json')), jobName(id))
      if (job.id !== id) throw foreign(id, job.id)
      return { summary: summaryOf(job), file: stamp }
    } catch (error) {
      unreadable.push({ id, error: diskFault(error, jobName(id)) })
      return known ?? null
    }
  }

  /** Null where there is no such folder. Asked for each of thousands of jobs: one operation, not two. */
  async function namesIn(place: string): Promise<string[] | null> {
    try {
      return await disk.list(place)
    } catch (error) {
      if (codeOf(error) === 'ENOTDIR' || codeOf(error) === 'ENOENT') return null
      throw error
    }
  }

  async function scan(atStart = false): Promise<ListChange[]> {
    overtaken.clear()
    const shards = await readShards(disk, at('index'))
    const found = new Map<string, IndexEntry>()
    unreadable = []
    const ids = await disk.list(at('jobs'))
    const queue = ids.values()
    await Promise.all(
      Array.from({ length: atOnce }, async () => {
        for (const id of queue) {
          const entry = await look(id, shards.entries.get(id), atStart && mayWrite)
          if (entry) found.set(id, entry)
        }
      }),
    )
    const present = new Set(ids)
    for (const [id, entry] of shards.entries) {
      if (present.has(id) || (await disk.isFolder(at('trash', id)))) continue
      // Neither a job nor in the trash: said to be missing, never quietly forgotten.
      unreadable.push({ id, error: missing(id) })
      found.set(id, entry)
    }
    for (const id of overtaken) {
      const entry = entries.get(id)
      if (entry) found.set(id, entry)
      else found.delete(id)
    }
    const changed = changes(entries, found)
    entries = found
    writer.found(shards)
    for (const [id, entry] of shards.entries) if (found.get(id) !== entry) writer.touch(entry)
    for (const [id, entry] of found) if (shards.entries.get(id) !== entry) writer.touch(entry)
    return changed
  }

  return {
    list: () => [...entries.values()].map(entry => entry.summary),
    has: id => entries.has(id),
    unreadable: () => unreadable,
    scan,
    remember({ job, file }) {
      const entry = { summary: summaryOf(job), file }
      overtaken.add(job.id)
      writer.touch(entries.get(job.id))
      entries.set(job.id, entry)
      writer.touch(entry)
      unreadable = unreadable.filter(one => one.id !== job.id)
    },
    drop(id) {
      overtaken.add(id)
      writer.touch(entries.get(id))
      entries.delete(id)
      unreadable = unreadable.filter(one => one.id !== id)
    },
    flush: writer.flush,
    close: writer.close,
  }
}

function changes(before: Map<string, IndexEntry>, after: Map<string, IndexEntry>): ListChange[] {
  const changed = [...after].filter(([id, { file }]) => !sameStamp(before.get(id)?.file ?? null, file))
  const gone = [...before.keys()].filter(id => !after.has(id))
  return [
    ...changed.map(([id, { summary }]): ListChange => ({ kind: 'job', id, rev: summary.rev })),
    ...gone.map((id): ListChange => ({ kind: 'removed', id })),
  ]
}

const missing = (id: string) =>
  new FaultError('NOT_FOUND', {
    what: 'The file of this job is missing.',
    where: jobName(id),
    hint: 'Restore it from a backup.',
  })

const foreign = (id: string, found: string) =>
  new FaultError('DAMAGED', {
    what: `The file holds another job (${found}).`,
    where: jobName(id),
    hint: 'It may be a copy: move its folder out of the catalogue.',
  })

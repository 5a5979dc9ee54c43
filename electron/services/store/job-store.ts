// The job files: read and verified, saved one after another with their previous versions kept.
import { join } from 'node:path'
import type { Job } from '../../../shared/job/job-schema.ts'
import { parseJob } from '../../../shared/job/parse-job.ts'
import { accept, FaultError } from '../fault.ts'
import type { Disk, FileStamp } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { makeFolders, removeLeftOvers } from './durable-file.ts'
import { jobBytes, readStoredJob, stampJob } from './job-file.ts'
import {
  dropOldVersions,
  keepVersion,
  newestWholeVersion,
  versionName,
  versionsAmong,
} from './job-versions.ts'
import { sameStamp } from './same-stamp.ts'
import { type StoredDocument, storedDocument } from './stored-document.ts'
import { turns } from './turns.ts'

/** A job and the file it is in. */
export type FiledJob = { job: Job; file: FileStamp }

export type JobStore = {
  /** Throws NOT_FOUND, DAMAGED, NEWER_VERSION, DISK. */
  load: (id: string) => Promise<FiledJob>
  /** The job names the revision it was made from. Throws REFUSED, DISK, and what `load` throws. */
  save: (job: Job) => Promise<FiledJob>
  /** Alone with the files of this job. */
  alone: <T>(id: string, work: () => Promise<T>) => Promise<T>
  /** What is known of the job is read afresh. */
  forget: (id: string) => void
}

export const isJobId = (id: string): boolean => /^[A-Za-z0-9_-]{1,64}$/.test(id)
export const jobName = (id: string): string => `jobs/${id}/job.json`

/** Documents kept in memory; the least recently used gives way. */
const mostDocuments = 200

type Open = { document: StoredDocument<Job>; stamp: FileStamp | null }

export function openJobStore(disk: Disk, folder: string): JobStore {
  const folderOf = (id: string) => join(folder, 'jobs', id)
  const stampOf = (id: string) => onDisk(jobName(id), () => disk.stamp(join(folderOf(id), 'job.json')))
  const inTurn = turns()
  const documents = new Map<string, Open>()

  function openOf(id: string): Open {
    const open = documents.get(id) ?? {
      document: storedDocument<Job>({
        disk,
        path: join(folderOf(id), 'job.json'),
        name: jobName(id),
        decode: bytes => readStoredJob(bytes, jobName(id)),
        encode: jobBytes,
      }),
      stamp: null,
    }
    documents.delete(id)
    documents.set(id, open)
    const oldest = documents.keys().next().value
    if (documents.size > mostDocuments && oldest !== undefined) documents.delete(oldest)
    return open
  }

  /** Says which earlier version could take the place of one that cannot be read. */
  async function withWayBack(error: unknown, id: string): Promise<unknown> {
    if (!(error instanceof FaultError) || error.code !== 'DAMAGED') return error
    const whole = await newestWholeVersion(disk, folderOf(id))
    if (whole?.id !== id) return error
    const from = `jobs/${id}/${versionName(whole.rev ?? 0)}`
    const hint = `The file was left as it is. The version before it is whole: close Plugtray and put a copy of ${from} in its place.`
    return new FaultError('DAMAGED', { ...error.fault, hint }, { cause: error })
  }

  async function read(id: string): Promise<FiledJob> {
    const stamp = isJobId(id) ? await stampOf(id) : null
    if (!stamp) throw await absent(id)
    const open = openOf(id)
    try {
      const job = await open.document.read()
      if (!job) throw await absent(id)
      if (job.id !== id) throw otherJob(id, job.id)
      open.stamp = stamp
      return { job, file: stamp }
    } catch (error) {
      documents.delete(id)
      throw await withWayBack(error, id)
    }
  }

  async function absent(id: string): Promise<FaultError> {
    const where = `job ${id}`
    if (!isJobId(id) || !(await disk.isFolder(folderOf(id)).catch(() => false)))
      return new FaultError('NOT_FOUND', {
        what: 'There is no such job.',
        where,
        hint: 'It may have been deleted.',
      })
    const whole = await newestWholeVersion(disk, folderOf(id))
    const hint = whole
      ? `Close Plugtray and put a copy of jobs/${id}/${versionName(whole.rev ?? 0)} in its place.`
      : 'Restore it from a backup, or run a check of the catalogue.'
    return new FaultError('NOT_FOUND', { what: 'The file of this job is missing.', where, hint })
  }

  async function current(id: string): Promise<Job | null> {
    const open = openOf(id)
    const stamp = await stampOf(id)
    if (open.stamp && !sameStamp(open.stamp, stamp)) {
      documents.delete(id)
      throw new FaultError('REFUSED', {
        what: 'The job file was changed by another program since it was opened.',
        where: jobName(id),
        hint: 'Open the job again; nothing was overwritten.',
      })
    }
    if (stamp && !open.stamp) return (await read(id)).job
    return stamp ? open.document.current() : null
  }

  async function write(job: Job, before: Job | null): Promise<FiledJob> {
    const { id } = job
    const place = folderOf(id)
    const isNew = !(await disk.isFolder(place))
    const { document } = openOf(id)
    try {
      await makeFolders(disk, place)
      const versions = versionsAmong(await removeLeftOvers(disk, place, await disk.list(place)))
      // Above every revision there ever was, also after an earlier one was put back by hand.
      const stamped = stampJob(job, Math.max(before?.rev ?? 0, versions.at(-1) ?? 0) + 1)
      accept(parseJob(stamped))
      if (before?.rev !== undefined) await keepVersion(disk, place, before.rev)
      await document.write(stamped)
      const file = await disk.stamp(join(place, 'job.json'))
      if (!file) throw await absent(id)
      documents.set(id, { document, stamp: file })
      // The job is kept whatever becomes of its older versions.
      await dropOldVersions(disk, place).catch(() => undefined)
      return { job: stamped, file }
    } catch (error) {
      documents.delete(id)
      if (isNew && (await disk.list(place).catch(() => ['?'])).length === 0)
        await disk.removeTree(place).catch(() => undefined)
      throw error
    }
  }

  return {
    load: id => inTurn(id, () => read(id)),
    save: job =>
      inTurn(job.id, async () => {
        if (!isJobId(job.id)) throw await absent(job.id)
        const before = await current(job.id)
        if ((job.rev ?? 0) !== (before?.rev ?? 0))
          throw new FaultError('REFUSED', {
            what: before
              ? `The job was changed meanwhile: it is at revision ${before.rev}, this change was made from ${job.rev ?? 'none'}.`
              : 'The file of this job is not there any more.',
            where: jobName(job.id),
            hint: 'Open the job again and make the change there; nothing was overwritten.',
          })
        return onDisk(jobName(job.id), () => write(job, before))
      }),
    alone: inTurn,
    forget: id => documents.delete(id),
  }
}

const otherJob = (id: string, found: string) =>
  new FaultError('DAMAGED', {
    what: `The file holds another job (${found}).`,
    where: jobName(id),
    hint: 'It may be a copy: move its folder out of the catalogue.',
  })

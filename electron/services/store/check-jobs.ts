// Verifies the jobs of a catalogue, in the list and in the trash, with their previous versions.
import { photosOf } from '../../../shared/job/current.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { recordingsOf } from './check-recordings.ts'
import type { Checking } from './checking.ts'
import { isLeftOver } from './durable-file.ts'
import type { IndexEntry } from './index-shards.ts'
import { readStoredJob } from './job-file.ts'
import { isJobId } from './job-store.ts'
import { versionOf } from './job-versions.ts'
import { summaryOf } from './summary-of.ts'

export type CheckedJobs = {
  /** Index entries of the whole jobs in the list, by id. */
  entries: Map<string, IndexEntry>
  /** Ids that have a folder in the list with something in it, whole or not. */
  ids: Set<string>
  /** Ids with an empty folder: one that was just begun, or one that lost its file, which the index can tell. */
  empty: Set<string>
  trashed: Set<string>
  /** Photos that a job shows, with the file that says so. */
  shown: Map<string, string>
  /** Photos that only a previous version names: needed to go back to it. */
  shownBefore: Set<string>
  /** Recordings that a job's pulls were made from, with the file that says so. */
  recordings: Map<string, string>
  /** Those that only a previous version names. */
  recordingsBefore: Set<string>
}

type Where = 'jobs' | 'trash'
/** An earlier job of the same id, kept beside a later one. */
const keptBeside = /^[A-Za-z0-9_-]{1,64}\.\d+$/

export async function checkJobs(
  checking: Checking,
  folders: { jobs: readonly string[]; trash: readonly string[] },
): Promise<CheckedJobs> {
  const found: CheckedJobs = {
    entries: new Map(),
    ids: new Set(),
    empty: new Set(),
    trashed: new Set(folders.trash),
    shown: new Map(),
    shownBefore: new Set(),
    recordings: new Map(),
    recordingsBefore: new Set(),
  }
  for (const where of ['jobs', 'trash'] as const)
    for (const id of folders[where]) {
      await checkFolder(checking, where, id, found)
      checking.step(`${where}/${id}`)
    }
  return found
}

async function checkFolder(checking: Checking, where: Where, id: string, found: CheckedJobs): Promise<void> {
  const { disk, at } = checking
  const place = `${where}/${id}`
  const isOurs = isJobId(id) || (where === 'trash' && keptBeside.test(id))
  if (!isOurs || !(await disk.isFolder(at(place)))) return checking.foreign(place)
  const names = await checking.names(place)
  if (where === 'jobs') (names.every(isLeftOver) ? found.empty : found.ids).add(id)
  for (const name of names) {
    if (name === 'job.json') continue
    if (versionOf(name) === null) checking.foreign(`${place}/${name}`)
    else await checkVersion(checking, `${place}/${name}`, found)
  }
  if (names.includes('job.json')) await checkCurrent(checking, where, id, found)
  else if (where === 'trash' || found.ids.has(id)) {
    const hint = 'Put a copy of its newest previous version in its place, or restore it from a backup.'
    checking.say(`${place}/job.json`, 'missing', 'The folder of this job holds no job file.', hint)
  }
}

async function checkCurrent(checking: Checking, where: Where, id: string, found: CheckedJobs): Promise<void> {
  const name = `${where}/${id}/job.json`
  const file = await checking.disk.stamp(checking.at(name))
  const job = await whole(checking, name)
  if (!file || !job) return
  if (job.id !== id && !keptBeside.test(id)) {
    const hint = 'It may be a copy: move its folder out of the catalogue.'
    checking.say(name, 'foreign', `The folder holds job ${job.id}.`, hint)
    return
  }
  for (const photo of photosOf(job)) found.shown.set(photo, name)
  for (const recording of recordingsOf(job)) found.recordings.set(recording, name)
  if (where === 'jobs') found.entries.set(id, { summary: summaryOf(job), file })
}

async function checkVersion(checking: Checking, name: string, found: CheckedJobs): Promise<void> {
  const job = await whole(checking, name)
  if (!job) return
  for (const photo of photosOf(job)) found.shownBefore.add(photo)
  for (const recording of recordingsOf(job)) found.recordingsBefore.add(recording)
}

async function whole(checking: Checking, name: string): Promise<Job | null> {
  const bytes = await checking.read(name)
  if (!bytes) return null
  try {
    return readStoredJob(bytes, name)
  } catch (error) {
    checking.sayFault(name, error)
    return null
  }
}

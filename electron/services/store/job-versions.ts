// The versions of a job before the current one: jobs/<id>/job.<rev>.json, the last five, each whole and verifiable.
import { join } from 'node:path'
import type { Job } from '../../../shared/job/job-schema.ts'
import type { Disk } from './disk.ts'
import { codeOf } from './disk-fault.ts'
import { writeSynced } from './durable-file.ts'
import { readStoredJob } from './job-file.ts'

const kept = 5

export const versionName = (rev: number): string => `job.${rev}.json`

/** Revision in the name of a previous version, or null for any other file. */
export function versionOf(name: string): number | null {
  const rev = /^job\.(\d{1,15})\.json$/.exec(name)?.[1]
  return rev === undefined ? null : Number(rev)
}

/** Revisions among the names of a job's folder, oldest first. */
export const versionsAmong = (names: readonly string[]): number[] =>
  names
    .map(versionOf)
    .filter(rev => rev !== null)
    .toSorted((a, b) => a - b)

/** Gives the current file of a job a second name under its revision, before another takes its place. */
export async function keepVersion(disk: Disk, folder: string, rev: number): Promise<void> {
  const from = join(folder, 'job.json')
  const to = join(folder, versionName(rev))
  try {
    await disk.link(from, to)
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return
    // A file system without links keeps a copy.
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'].includes(String(codeOf(error)))) throw error
    await writeSynced(disk, to, await disk.read(from))
  }
}

/** Removes all but the newest five. */
export async function dropOldVersions(disk: Disk, folder: string): Promise<void> {
  for (const rev of versionsAmong(await disk.list(folder)).slice(0, -kept))
    await disk.remove(join(folder, versionName(rev)))
}

/** The newest previous version that is whole, or null. */
export async function newestWholeVersion(disk: Disk, folder: string): Promise<Job | null> {
  const names = await disk.list(folder).catch(() => [])
  for (const rev of versionsAmong(names).toReversed()) {
    try {
      return readStoredJob(await disk.read(join(folder, versionName(rev))), versionName(rev))
    } catch {
      // Damaged too: an older one may be whole.
    }
  }
  return null
}

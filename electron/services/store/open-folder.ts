// Opening the folder of a catalogue: its version, its lock, its sub-folders, and what a killed process left behind.
import { join } from 'node:path'
import { FaultError } from '../fault.ts'
import { markerIsMissing, writeMarker } from './catalogue-marker.ts'
import type { Disk } from './disk.ts'
import { codeOf, onDisk } from './disk-fault.ts'
import { makeFolders, removeLeftOvers } from './durable-file.ts'
import { isOfLock, type Lock, sweepLock, takeLock } from './lock.ts'

export type OpenedFolder = {
  /** Absent where only reading is possible. */
  lock?: Lock
  readOnly: string | null
  isNew: boolean
}

const subFolders = ['jobs', 'index', 'trash', 'photos', 'derived'] as const
const swept = ['.', 'index', 'photos'] as const

/** A new folder becomes a catalogue. Throws NEWER_VERSION before anything is touched, and DISK. */
export async function openFolder(
  disk: Disk,
  folder: string,
  appVersion: string,
  now?: () => Date,
): Promise<OpenedFolder> {
  const at = (part: string) => join(folder, part)
  return onDisk('the catalogue folder', async () => {
    const unmarked = await markerIsMissing(disk, folder)
    const isNew = !(await disk.isFolder(at('jobs')))
    await makeFolders(disk, folder)
    const attempt = await lockOrReason(disk, folder, appVersion, now)
    if (!('lock' in attempt)) {
      await waitForMaker(disk, at('jobs'), attempt.heldBy)
      return { readOnly: attempt.heldBy, isNew: false }
    }
    try {
      for (const part of subFolders) await makeFolders(disk, at(part))
      for (const part of swept) await sweep(disk, at(part))
      await sweepLock(disk, folder)
      if (unmarked) await writeMarker(disk, folder, appVersion)
    } catch (error) {
      await attempt.lock.release()
      throw error
    }
    return { lock: attempt.lock, readOnly: null, isNew }
  })
}

/** A disk or folder that cannot be written to is still good for reading. */
async function lockOrReason(disk: Disk, folder: string, appVersion: string, now?: () => Date) {
  try {
    return await takeLock(disk, folder, appVersion, now)
  } catch (error) {
    const isReadOnly = ['EROFS', 'EACCES', 'EPERM'].includes(String(codeOf(error)))
    if (!isReadOnly || !(await disk.isFolder(join(folder, 'jobs')))) throw error
    return {
      heldBy:
        'The catalogue folder cannot be written to. Check its permissions, or move it to a disk that can.',
    }
  }
}

/** Temporary files of writers that are gone; those of the lock tell themselves whose they are. */
async function sweep(disk: Disk, folder: string): Promise<void> {
  const names = await disk.list(folder)
  await removeLeftOvers(
    disk,
    folder,
    names.filter(name => !isOfLock(name)),
  )
}

/** Another process may be making this catalogue at this very moment. */
async function waitForMaker(disk: Disk, jobs: string, heldBy: string): Promise<void> {
  for (let attempt = 0; !(await disk.isFolder(jobs)); attempt += 1) {
    if (attempt >= 40)
      throw new FaultError('READ_ONLY', {
        what: 'Another Plugtray is making this catalogue.',
        where: 'the catalogue folder',
        hint: heldBy,
      })
    await new Promise(resolve => setTimeout(resolve, 50))
  }
}

// Old or new, never between: a file is written beside its place, flushed, moved over, and the folder flushed.
import { randomBytes } from 'node:crypto'
import { dirname, join } from 'node:path'
import type { Disk } from './disk.ts'

/** Left by a process that was killed while writing; removed when the catalogue is opened for writing. */
export const isLeftOver = (name: string): boolean => /\.[0-9a-f]{12}\.tmp$/.test(name)

export const temporaryName = (path: string): string => `${path}.${randomBytes(6).toString('hex')}.tmp`

/** Creates missing folders from the nearest existing one down, each name flushed in its parent. */
export async function makeFolders(disk: Disk, folder: string): Promise<void> {
  if (await disk.isFolder(folder)) return
  const parent = dirname(folder)
  if (parent !== folder) await makeFolders(disk, parent)
  if (await disk.makeFolder(folder)) await disk.syncFolder(parent)
}

/** Writes a new file and flushes its content; a failure leaves no file behind. */
export async function writeSynced(disk: Disk, path: string, bytes: Uint8Array): Promise<void> {
  const file = await disk.create(path)
  try {
    try {
      await file.write(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
  } catch (error) {
    // The first failure is the one to tell; a temporary file that stays is removed at the next start.
    await disk.remove(path).catch(() => undefined)
    throw error
  }
}

/** Puts `bytes` at `path`, durable when this returns. `folder` of `path` must exist. */
export async function replaceFile(disk: Disk, path: string, bytes: Uint8Array): Promise<void> {
  const temporary = temporaryName(path)
  await writeSynced(disk, temporary, bytes)
  try {
    await disk.rename(temporary, path)
  } catch (error) {
    await disk.remove(temporary).catch(() => undefined)
    throw error
  }
  await disk.syncFolder(dirname(path))
}

/** Removes what killed processes left among the names of a folder; returns the names that stay. */
export async function removeLeftOvers(
  disk: Disk,
  folder: string,
  names: readonly string[],
): Promise<string[]> {
  for (const name of names.filter(isLeftOver)) await disk.remove(join(folder, name))
  return names.filter(name => !isLeftOver(name))
}

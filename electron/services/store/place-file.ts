// Writes a file of the photo folders: whole and flushed under a temporary name first, then moved to its place.
import { dirname, join } from 'node:path'
import type { Disk } from './disk.ts'
import { makeFolders, temporaryName, writeSynced } from './durable-file.ts'

/**
 * Durable under `name` (relative to the catalogue `folder`) when it returns; a failure, also of `check`, leaves nothing.
 * The temporary file lies at the top of the catalogue: there a start finds what a killed process left, without
 * looking into hundreds of photo folders.
 */
export async function placeFile(
  disk: Disk,
  folder: string,
  name: string,
  bytes: Uint8Array,
  check: (temporary: string) => Promise<void> = () => Promise.resolve(),
): Promise<void> {
  const path = join(folder, name)
  const temporary = temporaryName(join(folder, name.split('/').at(-1) ?? name))
  await makeFolders(disk, dirname(path))
  await writeSynced(disk, temporary, bytes)
  try {
    await check(temporary)
    await disk.rename(temporary, path)
  } catch (error) {
    await disk.remove(temporary).catch(() => undefined)
    throw error
  }
  await disk.syncFolder(dirname(path))
}

// Writes an original: its bytes are read back from the disk and hashed before they get their name.
import { createHash } from 'node:crypto'
import { dirname, join } from 'node:path'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { makeFolders, temporaryName, writeSynced } from './durable-file.ts'

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/**
 * Durable under `name` (relative to `folder`) when it returns. The temporary file lies directly in `photos/`, where one
 * that a killed process leaves is found and removed at the next start. Throws DISK when the bytes do not read back.
 */
export async function writeVerified(
  disk: Disk,
  folder: string,
  name: string,
  bytes: Uint8Array,
  sha256: string,
): Promise<void> {
  const path = join(folder, name)
  const temporary = temporaryName(join(folder, 'photos', sha256))
  await makeFolders(disk, dirname(path))
  await writeSynced(disk, temporary, bytes)
  try {
    if (sha256Of(await disk.read(temporary)) !== sha256) {
      throw new FaultError('DISK', {
        what: 'What was written does not read back the same; the photo was not kept.',
        where: name,
        hint: 'Check the disk and the memory of this computer, then add the photo again.',
      })
    }
    await disk.rename(temporary, path)
  } catch (error) {
    await disk.remove(temporary).catch(() => undefined)
    throw error
  }
  await disk.syncFolder(dirname(path))
}

// Writes an original: its bytes are read back from the disk and hashed before they get their name.
import { createHash } from 'node:crypto'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { placeFile } from './place-file.ts'

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** Durable under `name` (relative to `folder`) when it returns. Throws DISK when the bytes do not read back. */
export async function writeVerified(
  disk: Disk,
  folder: string,
  name: string,
  bytes: Uint8Array,
  sha256: string,
): Promise<void> {
  await placeFile(disk, folder, name, bytes, async temporary => {
    if (sha256Of(await disk.read(temporary)) === sha256) return
    throw new FaultError('DISK', {
      what: 'What was written does not read back the same; the photo was not kept.',
      where: name,
      hint: 'Check the disk and the memory of this computer, then add the photo again.',
    })
  })
}

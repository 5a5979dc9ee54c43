// The original photos of a catalogue, byte for byte under their SHA-256, in the format that their content has.
import { dirname, join } from 'node:path'
import { type PhotoFormat, photoFormats } from '../../../shared/job/tray-schema.ts'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { originalName } from './photo-paths.ts'
import { sha256Of, writeVerified } from './verified-write.ts'

export type FoundOriginal = { path: string; name: string; format: PhotoFormat }

export type Originals = {
  /** Durable when it returns. Bytes that are there already are verified, and put right if they were damaged. */
  put: (bytes: Uint8Array, sha256: string, format: PhotoFormat) => Promise<void>
  has: (sha256: string) => Promise<boolean>
  /** Throws NOT_FOUND. */
  find: (sha256: string) => Promise<FoundOriginal>
  /** Reads and verifies. Throws NOT_FOUND or DAMAGED. */
  open: (sha256: string) => Promise<{ bytes: Uint8Array; format: PhotoFormat }>
}

const missing = (sha256: string): FaultError =>
  new FaultError('NOT_FOUND', {
    what: 'The photo is missing from the catalogue.',
    where: `photo ${sha256}`,
    hint: 'Add the photo again, or restore it from a backup.',
  })

const damaged = (name: string): FaultError =>
  new FaultError('DAMAGED', {
    what: 'The stored photo does not match its hash: it was altered or damaged.',
    where: name,
    hint: 'Add the same photo again to put it right, or restore it from a backup.',
  })

export function originalsIn(folder: string, disk: Disk): Originals {
  const at = (name: string) => join(folder, name)

  async function look(sha256: string): Promise<FoundOriginal | null> {
    for (const format of photoFormats) {
      const name = originalName(sha256, format)
      if ((await onDisk(name, () => disk.stamp(at(name)))) !== null) return { path: at(name), name, format }
    }
    return null
  }

  async function find(sha256: string): Promise<FoundOriginal> {
    const found = await look(sha256)
    if (found === null) throw missing(sha256)
    return found
  }

  return {
    has: async sha256 => (await look(sha256)) !== null,
    find,
    async open(sha256) {
      const { path, name, format } = await find(sha256)
      const bytes = await onDisk(name, () => disk.read(path))
      if (sha256Of(bytes) !== sha256) throw damaged(name)
      return { bytes, format }
    },
    put(bytes, sha256, format) {
      const name = originalName(sha256, format)
      return onDisk(name, async () => {
        const isThere = (await disk.stamp(at(name))) !== null
        if (isThere && sha256Of(await disk.read(at(name))) === sha256) {
          // Its name may not be durable yet: an earlier attempt can have failed at just this step.
          await disk.syncFolder(dirname(at(name)))
          return
        }
        await writeVerified(disk, folder, name, bytes, sha256)
      })
    },
  }
}

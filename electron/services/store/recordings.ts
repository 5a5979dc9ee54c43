// The recordings of a catalogue, byte for byte under their SHA-256, as the device's program wrote them.
import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { dirname, join } from 'node:path'
import { FaultError } from '../fault.ts'
import { type Disk, realDisk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { makeFolders, temporaryName } from './durable-file.ts'
import { requireSha256 } from './photo-paths.ts'

export type RecordingStore = {
  /**
   * Copies a file in; durable when it returns. Bytes that are there already are verified, and put right if they were
   * damaged. Throws READ_ONLY, DISK.
   */
  put: (path: string, fileName: string) => Promise<string>
  /** Where the recording lies. Throws NOT_FOUND. */
  find: (sha256: string) => Promise<string>
}

/** Relative to the catalogue, with forward slashes. */
export const recordingName = (sha256: string): string => `recordings/${sha256.slice(0, 2)}/${sha256}.csv`

async function hashOf(path: string): Promise<string> {
  const hash = createHash('sha256')
  for await (const part of createReadStream(path)) hash.update(part)
  return hash.digest('hex')
}

/** The folder `recordings/` of the catalogue in `folder`; it is made with the first recording. */
export function openRecordingStore(
  folder: string,
  disk: Disk = realDisk,
  readOnly: () => string | null = () => null,
): RecordingStore {
  const at = (name: string) => join(folder, name)

  /** Copies while hashing; read back before it gets its name. */
  async function copy(path: string): Promise<string> {
    const temporary = temporaryName(at('recording'))
    const hash = createHash('sha256')
    try {
      const file = await disk.create(temporary)
      try {
        for await (const part of createReadStream(path, { highWaterMark: 1024 * 1024 })) {
          hash.update(part)
          await file.write(part)
        }
        await file.sync()
      } finally {
        await file.close()
      }
      const sha256 = hash.digest('hex')
      if ((await hashOf(temporary)) !== sha256)
        throw new FaultError('DISK', {
          what: 'What was written does not read back the same; the recording was not kept.',
          where: recordingName(sha256),
          hint: 'Check the disk and the memory of this computer, then add the recording again.',
        })
      const place = at(recordingName(sha256))
      await makeFolders(disk, dirname(place))
      await disk.rename(temporary, place)
      await disk.syncFolder(dirname(place))
      return sha256
    } catch (error) {
      await disk.remove(temporary).catch(() => undefined)
      throw error
    }
  }

  return {
    async put(path, fileName) {
      const reason = readOnly()
      if (reason !== null)
        throw new FaultError('READ_ONLY', {
          what: 'The catalogue can only be read here.',
          where: fileName,
          hint: reason,
        })
      return onDisk('recordings', async () => {
        const sha256 = await hashOf(path)
        const name = recordingName(sha256)
        const isThere = (await disk.stamp(at(name))) !== null
        if (!isThere || (await hashOf(at(name))) !== sha256) return copy(path)
        // Its name may not be durable yet: an earlier attempt can have failed at just this step.
        await disk.syncFolder(dirname(at(name)))
        return sha256
      })
    },
    async find(sha256) {
      requireSha256(sha256)
      const name = recordingName(sha256)
      if ((await onDisk(name, () => disk.stamp(at(name)))) !== null) return at(name)
      throw new FaultError('NOT_FOUND', {
        what: 'The recording is missing from the catalogue.',
        where: `recording ${sha256}`,
        hint: 'Add the file again, or restore it from a backup.',
      })
    },
  }
}

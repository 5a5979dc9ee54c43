// Files handed over but not yet imported: uploads (temporary files of ours) and, in the desktop window, files in place.
import { randomUUID } from 'node:crypto'
import { statfs } from 'node:fs/promises'
import { join } from 'node:path'
import { limits } from '../limits.ts'
import { FaultError } from './fault.ts'
import type { Disk } from './store/disk.ts'
import { onDisk } from './store/disk-fault.ts'
import { makeFolders } from './store/durable-file.ts'

export type WaitingFile = { path: string; name: string; ours: boolean }

export type WaitingFiles = {
  /**
   * Writes an upload to a temporary file on the catalogue's own disk while counting; gives its ref. Throws TOO_LARGE,
   * READ_ONLY, REFUSED (too many at once), DISK (full, or nearly).
   */
  receive: (name: string, body: AsyncIterable<Uint8Array>) => Promise<string>
  /** A file that stays where it is; gives its ref. */
  inPlace: (path: string, name: string) => string
  /** Looks at a file that goes on waiting. Throws NOT_FOUND. */
  peek: (ref: string) => WaitingFile
  /** Hands the files over; each ref works once. Throws NOT_FOUND for an unknown one. */
  take: (refs: readonly string[]) => WaitingFile[]
  /** Removes what was ours. */
  discard: (files: readonly WaitingFile[]) => Promise<void>
  close: () => Promise<void>
}

type Place = { folder: string; readonly readOnly: string | null }
export type Space = { free: number; total: number }

/** A recording is text and may be larger than a photo. */
const mostBytesOf = (name: string): number =>
  /\.(csv|tsv|txt|asc|dat)$/i.test(name) ? limits.recordingBytes : limits.photoBytes

const spaceOf = async (folder: string): Promise<Space> => {
  const { bavail, blocks, bsize } = await statfs(folder)
  return { free: bavail * bsize, total: blocks * bsize }
}

export function createWaitingFiles(
  catalogue: Place,
  disk: Disk,
  space: (folder: string) => Promise<Space> = spaceOf,
): WaitingFiles {
  const place = join(catalogue.folder, 'incoming')
  const waiting = new Map<string, WaitingFile>()
  let receiving = 0
  // Only the holder of the catalogue takes files in: what lies there was left by a host that was killed.
  const ready =
    catalogue.readOnly === null ? disk.removeTree(place).catch(() => undefined) : Promise.resolve()

  const keep = (file: WaitingFile): string => {
    if (waiting.size >= limits.waitingFiles)
      throw new FaultError('REFUSED', {
        what: `${limits.waitingFiles} files are waiting to be imported.`,
        where: file.name,
        hint: 'Import those first.',
      })
    const ref = randomUUID()
    waiting.set(ref, file)
    const drop = async () => {
      if (waiting.delete(ref) && file.ours) await disk.remove(file.path).catch(() => undefined)
    }
    setTimeout(() => void drop(), limits.waitingMs).unref()
    return ref
  }

  /** Jobs must stay writable: photos may not take the last of the disk. */
  async function requireSpace(name: string): Promise<void> {
    const { free, total } = await space(place)
    if (free - mostBytesOf(name) >= Math.min(limits.spareBytes, total * limits.spareShare)) return
    throw new FaultError('DISK', {
      what: 'The disk is nearly full.',
      where: name,
      hint: 'Make room, or move the catalogue to a larger disk. Readings can still be saved.',
    })
  }

  async function write(path: string, name: string, body: AsyncIterable<Uint8Array>): Promise<void> {
    const file = await disk.create(path)
    const most = mostBytesOf(name)
    try {
      let bytes = 0
      for await (const chunk of body) {
        bytes += chunk.byteLength
        if (bytes > most)
          throw new FaultError('TOO_LARGE', {
            what: `The file is larger than ${most / 1024 / 1024} MiB.`,
            where: name,
            hint:
              most === limits.photoBytes
                ? 'Add a smaller copy as JPEG.'
                : 'Save a shorter stretch of the recording.',
          })
        await file.write(chunk)
      }
    } finally {
      await file.close()
    }
  }

  return {
    async receive(name, body) {
      if (catalogue.readOnly !== null)
        throw new FaultError('READ_ONLY', {
          what: 'The catalogue can only be read here.',
          where: name,
          hint: catalogue.readOnly,
        })
      if (receiving >= limits.uploadsAtOnce)
        throw new FaultError('REFUSED', {
          what: `${limits.uploadsAtOnce} files are arriving already.`,
          where: name,
          hint: 'Send it again in a moment.',
        })
      receiving += 1
      try {
        await ready
        const path = join(place, randomUUID())
        await onDisk('incoming', async () => {
          await makeFolders(disk, place)
          await requireSpace(name)
          try {
            await write(path, name, body)
          } catch (error) {
            // The first failure is the one to tell; what stays is cleared away at the next start.
            await disk.remove(path).catch(() => undefined)
            throw error
          }
        })
        return keep({ path, name, ours: true })
      } finally {
        receiving -= 1
      }
    },
    inPlace: (path, name) => keep({ path, name, ours: false }),
    peek(ref) {
      const file = waiting.get(ref)
      if (file) return file
      throw new FaultError('NOT_FOUND', {
        what: 'The file is not here any more.',
        where: `file ${ref}`,
        hint: 'Add it again.',
      })
    },
    take(refs) {
      const missing = refs.find(ref => !waiting.has(ref))
      if (missing !== undefined)
        throw new FaultError('NOT_FOUND', {
          what: 'A file of this import is not here any more.',
          where: `file ${missing}`,
          hint: 'Add the files again.',
        })
      return [...new Set(refs)].flatMap(ref => {
        const file = waiting.get(ref)
        waiting.delete(ref)
        return file ? [file] : []
      })
    },
    async discard(files) {
      for (const file of files) if (file.ours) await disk.remove(file.path).catch(() => undefined)
    },
    async close() {
      await ready
      waiting.clear()
      if (catalogue.readOnly === null) await disk.removeTree(place).catch(() => undefined)
    },
  }
}

// Files handed over but not yet imported: uploads (temporary files of ours) and, in the desktop window, files in place.
import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { limits } from '../limits.ts'
import { FaultError } from './fault.ts'
import type { Disk } from './store/disk.ts'
import { makeFolders } from './store/durable-file.ts'

export type WaitingFile = { path: string; name: string; ours: boolean }

export type WaitingFiles = {
  /** Writes an upload to a temporary file while counting; refuses past the limit. Gives its ref. */
  receive: (name: string, body: AsyncIterable<Uint8Array>) => Promise<string>
  /** A file that stays where it is; gives its ref. */
  inPlace: (path: string, name: string) => string
  /** Hands the files over; each ref works once. Throws NOT_FOUND for an unknown one. */
  take: (refs: readonly string[]) => WaitingFile[]
  /** Removes what was ours. */
  discard: (files: readonly WaitingFile[]) => Promise<void>
  close: () => Promise<void>
}

export function createWaitingFiles(folder: string, disk: Disk): WaitingFiles {
  // A folder of this process, so that two hosts on one catalogue never clear each other's uploads.
  const place = join(folder, 'incoming', String(process.pid))
  const waiting = new Map<string, WaitingFile>()
  let receiving = 0

  const keep = (file: WaitingFile): string => {
    if (waiting.size >= limits.waitingFiles)
      throw new FaultError('REFUSED', {
        what: 'Too many files are waiting.',
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

  return {
    async receive(name, body) {
      if (receiving >= limits.uploadsAtOnce)
        throw new FaultError('REFUSED', {
          what: 'Too many uploads at once.',
          where: name,
          hint: 'Send it again in a moment.',
        })
      receiving += 1
      try {
        await makeFolders(disk, place)
        const path = join(place, randomUUID())
        const file = await disk.create(path)
        let bytes = 0
        try {
          for await (const chunk of body) {
            bytes += chunk.byteLength
            if (bytes > limits.photoBytes)
              throw new FaultError('TOO_LARGE', {
                what: 'The file is larger than 64 MiB.',
                where: name,
                hint: 'Add a smaller copy as JPEG.',
              })
            await file.write(chunk)
          }
          await file.close()
        } catch (error) {
          await file.close().catch(() => undefined)
          await disk.remove(path).catch(() => undefined)
          throw error
        }
        return keep({ path, name, ours: true })
      } finally {
        receiving -= 1
      }
    },
    inPlace: (path, name) => keep({ path, name, ours: false }),
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
      await disk.removeTree(place).catch(() => undefined)
      waiting.clear()
    },
  }
}

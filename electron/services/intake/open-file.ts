// Opens a file that a person handed over, trusting nothing: the bytes that are hashed here are the bytes that are
// decoded and stored, and whatever is not a plain file of a bearable size is refused without being read.
import { createHash } from 'node:crypto'
import { constants } from 'node:fs'
import { type FileHandle, lstat, open } from 'node:fs/promises'
import type { BigIntStats } from 'node:fs'
import { contentKind } from '../imaging/content-kind.ts'
import { maxPhotoBytes, megabyte } from '../imaging/picture-limits.ts'
import { RefusedFile, refusalOf } from './refused-file.ts'

export type OpenedFile = { bytes: Uint8Array; sha256: string }

const chunk = 4 * megabyte
const peek = 4096
// Never through a link at the last step, never waiting for the other end of a pipe. Absent on Windows.
const flags = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

function refuseSpecial(stats: BigIntStats): void {
  if (stats.isFile()) return
  if (stats.isSymbolicLink())
    throw new RefusedFile('This is a link, not a file. Add the file that it points to.')
  if (stats.isDirectory())
    throw new RefusedFile('This is a folder, not a file. Open it and add the photos in it.')
  throw new RefusedFile('This is a device or a pipe, not a file. Add a photo file.')
}

/** What a file over the limit is, from its beginning, since "too big" alone does not help with a video. */
async function refuseTooBig(handle: FileHandle, size: bigint): Promise<never> {
  const { buffer, bytesRead } = await handle.read(Buffer.alloc(peek), 0, peek, 0)
  const kind = contentKind(buffer.subarray(0, bytesRead))
  const what = 'other' in kind && !kind.other.startsWith('not ') ? `This is ${kind.other}` : 'This photo'
  const is = 'other' in kind && !kind.other.startsWith('not ') ? ' of' : ' is'
  const sized = `${what}${is} ${Math.ceil(Number(size) / megabyte)} MiB`
  throw new RefusedFile(
    `${sized}; at most ${maxPhotoBytes / megabyte} MiB are taken in. Add a smaller copy as JPEG.`,
  )
}

/** Reads up to the end, however long the file says it is, and at most one byte past `size`. */
async function readAll(handle: FileHandle, size: number, signal?: AbortSignal): Promise<OpenedFile> {
  const room = Buffer.allocUnsafeSlow(size + 1)
  const hash = createHash('sha256')
  let length = 0
  while (length < room.length) {
    signal?.throwIfAborted()
    const { bytesRead } = await handle.read(room, length, Math.min(chunk, room.length - length), null)
    if (bytesRead === 0) break
    hash.update(room.subarray(length, length + bytesRead))
    length += bytesRead
  }
  if (length !== size) {
    throw new RefusedFile(
      'The file changed while it was read. Wait until it is copied whole, then add it again.',
    )
  }
  return { bytes: room.subarray(0, size), sha256: hash.digest('hex') }
}

/** Throws RefusedFile for this file's faults; other errors of the system (no memory, no descriptors) as they are. */
export async function openFile(path: string, signal?: AbortSignal): Promise<OpenedFile> {
  try {
    const before = await lstat(path, { bigint: true })
    refuseSpecial(before)
    const handle = await open(path, flags)
    try {
      const stats = await handle.stat({ bigint: true })
      refuseSpecial(stats)
      if (stats.dev !== before.dev || stats.ino !== before.ino) {
        throw new RefusedFile('Another file took the place of this one while it was opened. Add it again.')
      }
      if (stats.size > BigInt(maxPhotoBytes)) return await refuseTooBig(handle, stats.size)
      return await readAll(handle, Number(stats.size), signal)
    } finally {
      await handle.close()
    }
  } catch (error) {
    throw refusalOf(error) ?? error
  }
}

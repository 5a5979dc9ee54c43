// Opens the file of a recording and streams it, trusting nothing: a plain file of a bearable size, no link, no pipe.
import { constants } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { FaultError } from '../fault.ts'
import { codeOf } from '../store/disk-fault.ts'

const MiB = 1024 * 1024
export const largestRecording = 512 * MiB
const chunkBytes = MiB

// Never through a link at the last step, never waiting for the other end of a pipe. Absent on Windows.
const flags = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

const refused = (name: string, what: string, hint: string) =>
  new FaultError('BAD_INPUT', { what, where: name, hint })

async function opened(path: string, name: string): Promise<{ handle: FileHandle; size: number }> {
  const handle = await open(path, flags).catch((error: unknown) => {
    if (codeOf(error) === 'ELOOP')
      throw refused(name, 'This is a link, not a file.', 'Add the file that it points to.')
    throw new FaultError('NOT_FOUND', {
      what: 'The recording cannot be opened.',
      where: name,
      hint: 'Check that the file is still there and may be read, then add it again.',
    })
  })
  try {
    const stats = await handle.stat()
    if (!stats.isFile()) throw refused(name, 'This is not a plain file.', 'Add the recording as a CSV file.')
    if (stats.size > largestRecording)
      throw new FaultError('TOO_LARGE', {
        what: `The recording has ${Math.ceil(stats.size / MiB)} MiB; at most ${largestRecording / MiB} MiB are read.`,
        where: name,
        hint: 'Save a shorter stretch, or fewer samples a second.',
      })
    if (stats.size === 0) throw refused(name, 'The file is empty.', 'Save the recording again.')
    return { handle, size: stats.size }
  } catch (error) {
    await handle.close()
    throw error
  }
}

/** First bytes of the file, at most `most`, and its size. Throws NOT_FOUND, BAD_INPUT, TOO_LARGE. */
export async function beginningOf(
  path: string,
  name: string,
  most: number,
): Promise<{ bytes: Uint8Array; size: number }> {
  const { handle, size } = await opened(path, name)
  try {
    const { buffer, bytesRead } = await handle.read(
      Buffer.alloc(Math.min(most, size)),
      0,
      Math.min(most, size),
      0,
    )
    return { bytes: buffer.subarray(0, bytesRead), size }
  } finally {
    await handle.close()
  }
}

/** Gives every part of the file to `take` in order; the bytes are only good until it returns. Throws as above. */
export async function streamBytes(
  path: string,
  name: string,
  take: (bytes: Uint8Array, done: number, size: number) => void,
): Promise<void> {
  const { handle, size } = await opened(path, name)
  try {
    const room = Buffer.allocUnsafeSlow(chunkBytes)
    let done = 0
    for (;;) {
      const { bytesRead } = await handle.read(room, 0, room.length, null)
      if (bytesRead === 0) break
      done += bytesRead
      if (done > largestRecording)
        throw refused(
          name,
          'The file grew while it was read.',
          'Wait until it is saved whole, then add it again.',
        )
      take(room.subarray(0, bytesRead), done, size)
    }
  } finally {
    await handle.close()
  }
}

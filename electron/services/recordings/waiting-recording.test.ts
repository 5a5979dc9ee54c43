// Recordings wait like photos do, but may be larger.
import { describe, expect, it } from 'vitest'
import { limits } from '../../limits.ts'
import { createWaitingFiles } from '../waiting-files.ts'
import { realDisk, type Disk } from '../store/disk.ts'

/** Takes any number of bytes and keeps none. */
const bottomless: Disk = {
  ...realDisk,
  create: async () => ({
    write: async () => undefined,
    sync: async () => undefined,
    close: async () => undefined,
  }),
  isFolder: async () => true,
  remove: async () => undefined,
  removeTree: async () => undefined,
}

const files = () =>
  createWaitingFiles({ folder: '/nowhere', readOnly: null }, bottomless, async () => ({
    free: 1e12,
    total: 2e12,
  }))

async function* bytes(count: number): AsyncGenerator<Uint8Array> {
  const part = new Uint8Array(1024 * 1024)
  for (let left = count; left > 0; left -= part.length)
    yield left < part.length ? part.subarray(0, left) : part
}

describe('a recording that is handed over', () => {
  it('may be as large as recordings get, and not a byte larger', async () => {
    const waiting = files()
    const ref = await waiting.receive('cranking.CSV', bytes(limits.recordingBytes))
    expect(waiting.peek(ref)).toMatchObject({ name: 'cranking.CSV', ours: true })
    await expect(waiting.receive('cranking.csv', bytes(limits.recordingBytes + 1))).rejects.toMatchObject({
      code: 'TOO_LARGE',
      fault: { where: 'cranking.csv', hint: expect.stringMatching(/shorter/) },
    })
  })

  it('leaves the limit of photos as it is', async () => {
    await expect(files().receive('plug.jpg', bytes(limits.photoBytes + 1))).rejects.toMatchObject({
      code: 'TOO_LARGE',
      fault: { what: 'The file is larger than 64 MiB.' },
    })
  })

  it('can be looked at until it is taken, and never after', async () => {
    const waiting = files()
    const ref = await waiting.receive('cranking.csv', bytes(10))
    expect(waiting.peek(ref)).toEqual(waiting.peek(ref))
    waiting.take([ref])
    expect(() => waiting.peek(ref)).toThrow(/not here any more/)
  })
})

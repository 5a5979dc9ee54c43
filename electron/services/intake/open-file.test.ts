import { createHash } from 'node:crypto'
import type * as FileSystem from 'node:fs/promises'
import { appendFile, mkdtemp, rename, rm, symlink, truncate, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { openFile } from './open-file.ts'
import { RefusedFile } from './refused-file.ts'

/** What happens between the look at the file and its opening. */
let meanwhile: () => Promise<void>

vi.mock('node:fs/promises', async importOriginal => {
  const original = await importOriginal<typeof FileSystem>()
  return {
    ...original,
    open: async (...args: Parameters<typeof original.open>) => {
      await meanwhile()
      return original.open(...args)
    },
  }
})

let folder: string
let path: string
beforeEach(async () => {
  meanwhile = () => Promise.resolve()
  folder = await mkdtemp(join(tmpdir(), 'open-'))
  path = join(folder, 'a.jpg')
  await writeFile(path, 'twelve bytes')
  return () => rm(folder, { recursive: true })
})

const code = (name: string) => Object.assign(new Error(name), { code: name })

describe('opening a file', () => {
  it('gives the bytes and the hash of these very bytes', async () => {
    const { bytes, sha256 } = await openFile(path)
    expect(Buffer.from(bytes).toString()).toBe('twelve bytes')
    expect(sha256).toBe(createHash('sha256').update('twelve bytes').digest('hex'))
  })

  it('reads a file of more than one chunk', async () => {
    const large = Buffer.alloc(9 * 1024 * 1024, 'plug')
    await writeFile(path, large)
    const { bytes, sha256 } = await openFile(path)
    expect(Buffer.compare(bytes, large)).toBe(0)
    expect(sha256).toBe(createHash('sha256').update(large).digest('hex'))
  })

  it('refuses a file that takes the place of the one looked at', async () => {
    meanwhile = async () => {
      await writeFile(join(folder, 'other.jpg'), 'not that one')
      await rename(join(folder, 'other.jpg'), path)
    }
    await expect(openFile(path)).rejects.toThrow('Another file took the place')
  })

  it('refuses a link that takes its place', async () => {
    meanwhile = async () => {
      await symlink('/etc/hostname', join(folder, 'link'))
      await rename(join(folder, 'link'), path)
    }
    await expect(openFile(path)).rejects.toThrow('This is a link')
  })

  it('takes what a file has grown to before it was opened, up to the limit', async () => {
    meanwhile = () => appendFile(path, ' and more')
    expect(Buffer.from((await openFile(path)).bytes).toString()).toBe('twelve bytes and more')
    meanwhile = () => truncate(path, 64 * 1024 * 1024 + 1)
    await expect(openFile(path)).rejects.toThrow('at most 64 MiB')
  })

  it('refuses for this file alone what is its own fault, and throws on what is not', async () => {
    meanwhile = () => Promise.reject(code('EIO'))
    await expect(openFile(path)).rejects.toBeInstanceOf(RefusedFile)
    meanwhile = () => Promise.reject(code('EMFILE'))
    await expect(openFile(path)).rejects.toMatchObject({ code: 'EMFILE' })
  })

  it('stops when cancelled', async () => {
    await expect(openFile(path, AbortSignal.abort(new Error('cancelled')))).rejects.toThrow('cancelled')
  })
})

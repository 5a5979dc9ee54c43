// The real disk: what its operations promise to the code above them.
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { realDisk } from './disk.ts'
import { replaceFile } from './durable-file.ts'
import { sameStamp } from './same-stamp.ts'

let folder = ''
const at = (name: string) => join(folder, name)

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-disk-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

describe('the real disk', () => {
  it('creates a file only where there is none, and keeps the one that is there', async () => {
    await writeFile(at('file'), 'there')
    await expect(realDisk.create(at('file'))).rejects.toThrow('EEXIST')
    expect(await readFile(at('file'), 'utf8')).toBe('there')
  })

  it('writes in pieces, and all of it', async () => {
    const file = await realDisk.create(at('file'))
    const piece = Buffer.alloc(300_000, 'x')
    for (let n = 0; n < 3; n += 1) await file.write(piece)
    await file.sync()
    await file.close()
    expect((await realDisk.stamp(at('file')))?.size).toBe(900_000)
  })

  it('links only where the name is free', async () => {
    await writeFile(at('a'), 'a')
    await writeFile(at('b'), 'b')
    await expect(realDisk.link(at('a'), at('b'))).rejects.toThrow('EEXIST')
    await realDisk.link(at('a'), at('c'))
    expect(await readFile(at('c'), 'utf8')).toBe('a')
  })

  it('stamps plain files only: no folder, no link, nothing that is not there', async () => {
    await mkdir(at('folder'))
    await symlink(at('folder'), at('link'))
    await writeFile(at('file'), '')
    for (const name of ['folder', 'link', 'nothing', 'file/below'])
      expect([name, await realDisk.stamp(at(name))]).toEqual([name, null])
    expect(await realDisk.isFolder(at('folder'))).toBe(true)
    for (const name of ['link', 'file', 'nothing', 'file/below'])
      expect([name, await realDisk.isFolder(at(name))]).toEqual([name, false])
  })

  it('stamps two contents of one length differently, however quickly one follows the other', async () => {
    await replaceFile(realDisk, at('file'), Buffer.from('0'))
    for (let n = 1; n < 50; n += 1) {
      const before = await realDisk.stamp(at('file'))
      // As the store does: the content before keeps a name, so that its number is not given out again.
      await realDisk.link(at('file'), at(`file.${n}`))
      await replaceFile(realDisk, at('file'), Buffer.from(String(n % 10)))
      expect(sameStamp(before, await realDisk.stamp(at('file')))).toBe(false)
    }
  })

  it('makes a folder once, lists in order, flushes folders, and removes', async () => {
    expect([await realDisk.makeFolder(at('f')), await realDisk.makeFolder(at('f'))]).toEqual([true, false])
    for (const name of ['b', 'a']) await writeFile(at(`f/${name}`), '')
    await realDisk.syncFolder(at('f'))
    await expect(realDisk.syncFolder(at('nothing'))).rejects.toThrow('ENOENT')
    expect(await realDisk.list(at('f'))).toEqual(['a', 'b'])
    await realDisk.remove(at('f/a'))
    await expect(realDisk.remove(at('f/a'))).rejects.toThrow('ENOENT')
    await realDisk.removeTree(at('f'))
    await realDisk.removeTree(at('f'))
    expect(await realDisk.list(folder)).toEqual([])
  })
})

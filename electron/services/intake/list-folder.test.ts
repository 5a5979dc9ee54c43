import { execFileSync } from 'node:child_process'
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { listFolder, maxDepth, maxEntries } from './list-folder.ts'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'list-'))
  return () => rm(folder, { recursive: true })
})

const touch = async (name: string): Promise<void> => {
  await mkdir(join(folder, name, '..'), { recursive: true })
  await writeFile(join(folder, name), '')
}

describe('listing a folder', () => {
  it('gives the files as people count, with their path inside', async () => {
    for (const name of ['IMG_10.jpg', 'IMG_9.jpg', 'b/IMG_1.jpg', 'notes.txt']) await touch(name)
    const { files, skipped } = await listFolder(folder)
    expect(files.map(file => file.name)).toEqual(['b/IMG_1.jpg', 'IMG_9.jpg', 'IMG_10.jpg', 'notes.txt'])
    expect(files[0]?.path).toBe(join(folder, 'b', 'IMG_1.jpg'))
    expect(skipped).toEqual({ hidden: 0, links: 0, devices: 0, tooDeep: 0, unreadable: 0 })
  })

  it('passes over and counts hidden files and folders, links in and out, loops, pipes', async () => {
    for (const name of ['a.jpg', '.DS_Store', '.hidden/b.jpg']) await touch(name)
    await symlink('/etc', join(folder, 'out'))
    await symlink('.', join(folder, 'loop'))
    await symlink('a.jpg', join(folder, 'link.jpg'))
    execFileSync('mkfifo', [join(folder, 'pipe.jpg')])
    const { files, skipped } = await listFolder(folder)
    expect(files.map(file => file.name)).toEqual(['a.jpg'])
    expect(skipped).toEqual({ hidden: 2, links: 3, devices: 1, tooDeep: 0, unreadable: 0 })
  })

  it(`goes ${maxDepth} folders deep, counting what lies deeper`, async () => {
    const level = (n: number) => Array.from({ length: n }, (_, i) => `d${i}`).join('/')
    await touch(`${level(maxDepth - 1)}/last.jpg`)
    await touch(`${level(maxDepth)}/beyond.jpg`)
    const { files, skipped } = await listFolder(folder)
    expect(files.map(file => file.name)).toEqual([`${level(maxDepth - 1)}/last.jpg`])
    expect(skipped.tooDeep).toBe(1)
  })

  const fill = (count: number) =>
    Promise.all(Array.from({ length: count }, (_, i) => writeFile(join(folder, `${i}.jpg`), '')))

  it.each([maxEntries - 1, maxEntries])('takes %i entries', async count => {
    await fill(count)
    expect((await listFolder(folder)).files).toHaveLength(count)
  })

  it(`refuses one more than ${maxEntries}`, async () => {
    await fill(maxEntries + 1)
    await expect(listFolder(folder)).rejects.toMatchObject({
      code: 'REFUSED',
      fault: { what: expect.stringContaining('5,000') },
    })
  })

  it('says so when there is no such folder, or it is a file', async () => {
    await touch('a.jpg')
    await expect(listFolder(join(folder, 'none'))).rejects.toMatchObject({ code: 'NOT_FOUND' })
    await expect(listFolder(join(folder, 'a.jpg'))).rejects.toMatchObject({ code: 'REFUSED' })
  })

  it('stops when cancelled', async () => {
    await touch('a.jpg')
    await expect(listFolder(folder, AbortSignal.abort(new Error('cancelled')))).rejects.toThrow('cancelled')
  })
})

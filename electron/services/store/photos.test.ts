import { createHash } from 'node:crypto'
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { picture, type PictureOptions } from '../../../tests/fixtures/images/pictures.ts'
import { createImaging } from '../imaging/imaging.ts'
import { openCatalogue } from './catalogue.ts'
import { type Disk, realDisk } from './disk.ts'
import { openPhotoStore, type PhotoStore, type PhotoStoreOptions } from './photos.ts'

let folder: string
const open: PhotoStore[] = []

function store(disk: Disk = realDisk, options: PhotoStoreOptions = {}): PhotoStore {
  const made = openPhotoStore(folder, disk, options)
  open.push(made)
  return made
}

const sha256Of = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

async function kept(format: 'jpeg' | 'png' | 'tiff' | 'webp', options: PictureOptions, photos = store()) {
  const bytes = await picture(1, options).toFormat(format).toBuffer()
  const sha256 = sha256Of(bytes)
  await photos.put(bytes, sha256, format)
  return { photos, bytes, sha256 }
}

const namesIn = async (part: string): Promise<string[]> =>
  (await readdir(join(folder, part), { recursive: true, withFileTypes: true }).catch(() => []))
    .filter(entry => entry.isFile())
    .map(entry => entry.name)
    .sort()

const read = async (made: Awaited<ReturnType<PhotoStore['derived']>>): Promise<Uint8Array> =>
  'bytes' in made ? made.bytes : readFile(made.path)

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'photos-'))
  return async () => {
    await Promise.all(open.splice(0).map(photos => photos.close()))
    await rm(folder, { recursive: true })
  }
})

describe('originals', () => {
  it('lie under their hash, byte for byte', async () => {
    const { photos, bytes, sha256 } = await kept('jpeg', {})
    const { path, format } = await photos.find(sha256)
    expect(path).toBe(join(folder, 'photos', sha256.slice(0, 2), `${sha256}.jpg`))
    expect(format).toBe('jpeg')
    expect(await readFile(path)).toEqual(bytes)
    expect(await photos.has(sha256)).toBe(true)
    expect(await photos.has('0'.repeat(64))).toBe(false)
  })

  it('are written, flushed, read back, named, and their folder flushed, in this order', async () => {
    const log: string[] = []
    const logged: Disk = {
      ...realDisk,
      async create(path) {
        const file = await realDisk.create(path)
        return {
          write: async bytes => {
            await file.write(bytes)
            log.push('write')
          },
          sync: async () => {
            await file.sync()
            log.push('sync')
          },
          close: file.close,
        }
      },
      read: async path => {
        log.push(path.endsWith('.tmp') ? 'read back' : 'read')
        return realDisk.read(path)
      },
      rename: async (from, to) => {
        await realDisk.rename(from, to)
        log.push('rename')
      },
      syncFolder: async path => {
        await realDisk.syncFolder(path)
        log.push('sync folder')
      },
    }
    await mkdir(join(folder, 'photos'))
    await kept('jpeg', {}, store(logged))
    // The first line is the new folder's own name in its parent.
    expect(log).toEqual(['sync folder', 'write', 'sync', 'read back', 'rename', 'sync folder'])
  })

  it('are not acknowledged when they do not read back the same; nothing stays behind', async () => {
    const bad: Disk = {
      ...realDisk,
      async create(path) {
        const file = await realDisk.create(path)
        return {
          ...file,
          write: bytes => file.write(Uint8Array.from(bytes, (byte, i) => (i === 100 ? byte ^ 1 : byte))),
        }
      },
    }
    await expect(kept('jpeg', {}, store(bad))).rejects.toMatchObject({ code: 'DISK' })
    expect(await namesIn('.')).toEqual([])
  })

  it('leave nothing behind when any step fails', async () => {
    const steps = ['create', 'rename', 'makeFolder', 'read', 'syncFolder'] as const
    for (const step of steps) {
      const failing: Disk = {
        ...realDisk,
        [step]: () => Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' })),
      }
      await rm(join(folder, 'photos'), { recursive: true, force: true })
      await expect(kept('jpeg', { width: 97 }, store(failing))).rejects.toMatchObject({ code: 'DISK' })
      expect((await namesIn('.')).filter(name => name.endsWith('.tmp'))).toEqual([])
    }
    await kept('jpeg', { width: 97 })
  })

  it('that are there already are acknowledged only once their name is durable', async () => {
    const noFlush = {
      ...realDisk,
      syncFolder: () => Promise.reject(Object.assign(new Error('io'), { code: 'EIO' })),
    }
    await mkdir(join(folder, 'photos'))
    for (let attempt = 0; attempt < 2; attempt++) {
      await expect(kept('jpeg', {}, store(noFlush))).rejects.toMatchObject({ code: 'DISK' })
    }
    await kept('jpeg', {})
  })

  it('that are damaged or gone are said to be, by name', async () => {
    const { photos, bytes, sha256 } = await kept('jpeg', {})
    const { path } = await photos.find(sha256)
    await writeFile(
      path,
      Uint8Array.from(bytes, (byte, i) => (i === 200 ? byte ^ 4 : byte)),
    )
    await expect(photos.open(sha256)).rejects.toMatchObject({
      code: 'DAMAGED',
      fault: { where: `photos/${sha256.slice(0, 2)}/${sha256}.jpg` },
    })
    await rm(path)
    await expect(photos.open(sha256)).rejects.toMatchObject({ code: 'NOT_FOUND' })
    await expect(photos.derived(sha256, 'thumb')).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })

  it.each(['', '../../etc/passwd', 'A'.repeat(64), '0'.repeat(63), `${'0'.repeat(64)}/x`])(
    'are never looked for under %j',
    async name => {
      const photos = store()
      for (const work of [photos.find, photos.has, photos.open, photos.hasSizes]) {
        await expect(work(name)).rejects.toMatchObject({ code: 'NOT_FOUND' })
      }
      await expect(photos.derived(name, 'thumb')).rejects.toMatchObject({ code: 'NOT_FOUND' })
      await expect(photos.put(Buffer.from('x'), name, 'jpeg')).rejects.toMatchObject({ code: 'NOT_FOUND' })
    },
  )
})

describe('a process killed while it writes a photo', () => {
  it('leaves a temporary file that the next opening of the catalogue removes', async () => {
    const dead: Disk = { ...realDisk, rename: () => new Promise(() => undefined) }
    const photos = store(dead)
    const bytes = await picture(1).jpeg().toBuffer()
    void photos.put(bytes, sha256Of(bytes), 'jpeg')
    await vi.waitFor(async () => expect(await namesIn('.')).toEqual([expect.stringMatching(/\.tmp$/)]))
    await (await openCatalogue(folder, { appVersion: '0' })).close()
    expect((await namesIn('.')).filter(name => name.endsWith('.tmp'))).toEqual([])
  })
})

describe('derived pictures', () => {
  it('are made when asked for, both with one decode, then read from disk, and made again when deleted', async () => {
    const imaging = createImaging({ parallel: 2 })
    let decodes = 0
    const counted = {
      ...imaging,
      sizes: (...args: Parameters<typeof imaging.sizes>) => (decodes++, imaging.sizes(...args)),
    }
    const { photos, sha256 } = await kept(
      'jpeg',
      { width: 800, height: 400 },
      store(realDisk, { imaging: counted }),
    )
    const made = await Promise.all([photos.derived(sha256, 'thumb'), photos.derived(sha256, 'screen')])
    expect(decodes).toBe(1)
    const [thumb, screen] = await Promise.all(made.map(read))
    expect(await sharp(thumb).metadata()).toMatchObject({ width: 320, height: 160 })
    expect(await sharp(screen).metadata()).toMatchObject({ width: 800, height: 400 })
    expect(await namesIn('derived')).toEqual([`${sha256}.screen.jpg`, `${sha256}.thumb.jpg`])
    const again = await photos.derived(sha256, 'thumb')
    expect('path' in again && again.type).toBe('image/jpeg')
    await rm(join(folder, 'derived'), { recursive: true })
    expect(await read(await photos.derived(sha256, 'thumb'))).toEqual(thumb)
    expect(decodes).toBe(2)
  })

  it('in full are the original where a browser shows it upright, else a JPEG that is kept', async () => {
    const cases = [
      ['jpeg', 6, 'image/jpeg', true],
      ['png', undefined, 'image/png', true],
      ['webp', undefined, 'image/webp', true],
      ['webp', 6, 'image/jpeg', false],
      ['png', 6, 'image/jpeg', false],
      ['tiff', undefined, 'image/jpeg', false],
    ] as const
    for (const [format, orientation, type, isOriginal] of cases) {
      const options = { width: 90, height: 60, ...(orientation === undefined ? {} : { orientation }) }
      const { photos, bytes, sha256 } = await kept(format, options)
      const full = await photos.derived(sha256, 'full')
      expect(full.type).toBe(type)
      expect(Buffer.compare(await read(full), bytes) === 0).toBe(isOriginal)
      const upright = await sharp(await read(full)).metadata()
      expect(upright.autoOrient).toEqual(
        orientation === 6 ? { width: 60, height: 90 } : { width: 90, height: 60 },
      )
    }
    expect(await namesIn('derived')).toHaveLength(3)
  })

  it('are shown even where nothing can be written', async () => {
    const { sha256 } = await kept('tiff', { width: 800, height: 400 })
    const full = {
      ...realDisk,
      create: () => Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' })),
    }
    for (const photos of [store(full), store(realDisk, { readOnly: true })]) {
      for (const kind of ['thumb', 'screen', 'full'] as const) {
        expect((await sharp(await read(await photos.derived(sha256, kind))).metadata()).format).toBe('jpeg')
      }
    }
    expect(await namesIn('derived')).toEqual([])
  })

  it('of a reading-only catalogue are not written, nor are originals', async () => {
    const { bytes, sha256 } = await kept('jpeg', {})
    const photos = store(realDisk, { readOnly: true })
    await expect(photos.put(bytes, sha256, 'jpeg')).rejects.toMatchObject({ code: 'READ_ONLY' })
    const sizes = { thumb: bytes, screen: bytes }
    await expect(photos.putSizes(sha256, sizes)).rejects.toMatchObject({ code: 'READ_ONLY' })
  })
})

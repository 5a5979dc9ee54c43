import { createHash } from 'node:crypto'
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { realDisk } from './disk.ts'
import { openRecordingStore, recordingName } from './recordings.ts'

const text = 'time,current\n0,1\n'
const sha256 = createHash('sha256').update(text).digest('hex')

let folder = ''
let source = ''
beforeEach(async () => {
  const place = await mkdtemp(join(tmpdir(), 'plugtray-recordings-'))
  folder = join(place, 'catalogue')
  await mkdir(folder)
  source = join(place, 'from-device.csv')
  await writeFile(source, text)
})
afterEach(() => rm(join(folder, '..'), { recursive: true, force: true }))

describe('the recordings of a catalogue', () => {
  test('are kept byte for byte under their hash, and found again', async () => {
    const store = openRecordingStore(folder)
    expect(await store.put(source, 'from-device.csv')).toBe(sha256)
    const path = await store.find(sha256)
    expect(path).toBe(join(folder, recordingName(sha256)))
    expect(await readFile(path, 'utf8')).toBe(text)
    expect(await readdir(folder)).toEqual(['recordings'])
  })

  test('are put right when they were damaged, and left alone when whole', async () => {
    const store = openRecordingStore(folder)
    await store.put(source, 'x.csv')
    const path = await store.find(sha256)
    await writeFile(path, 'time,current\n9,9\n')
    await store.put(source, 'x.csv')
    expect(await readFile(path, 'utf8')).toBe(text)
    await store.put(source, 'x.csv')
    expect(await readFile(path, 'utf8')).toBe(text)
  })

  test('leave nothing behind when the disk fails', async () => {
    const failing = {
      ...realDisk,
      rename: () => Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' })),
    }
    await expect(openRecordingStore(folder, failing).put(source, 'x.csv')).rejects.toMatchObject({
      code: 'DISK',
    })
    expect((await readdir(folder)).filter(name => name.includes('tmp'))).toEqual([])
    await expect(openRecordingStore(folder).find(sha256)).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })

  test('are not written where the catalogue can only be read', async () => {
    const store = openRecordingStore(folder, realDisk, () => 'Held elsewhere.')
    await expect(store.put(source, 'x.csv')).rejects.toMatchObject({ code: 'READ_ONLY' })
    expect(await readdir(folder)).toEqual([])
  })

  test('are asked for by a hash and nothing else', async () => {
    await expect(openRecordingStore(folder).find('../jobs/a')).rejects.toMatchObject({ code: 'NOT_FOUND' })
  })
})

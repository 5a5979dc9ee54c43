// Changes of a catalogue: who made them from what, who hears of them, and what a newer version or another process means.
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { faultOf, jobCalled, open, saveAgain } from '../../../tests/faults/storage/example.ts'
import { SimulatedDisk } from '../../../tests/faults/storage/simulated-disk.ts'
import type { Catalogue } from './catalogue.ts'
import { sealed } from './content-hash.ts'
import { indexVersion } from './index-shards.ts'

let folder = ''
let catalogue: Catalogue

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-changes-'))
  catalogue = await open(folder)
})
afterEach(async () => {
  await catalogue.close()
  await rm(folder, { recursive: true, force: true })
})

describe('a save', () => {
  it('made from an older revision is refused, and the newer one stays', async () => {
    const first = await catalogue.save(jobCalled('a', 'first'))
    const second = await catalogue.save({ ...first, complaint: 'second' })
    const late = await faultOf(() => catalogue.save({ ...first, complaint: 'made from the first' }))
    expect([late?.code, late?.fault.what]).toEqual(['REFUSED', expect.stringContaining('revision 2')])
    expect(await catalogue.load('a')).toEqual(second)
    expect((await faultOf(() => catalogue.save(jobCalled('a', 'as if new'))))?.code).toBe('REFUSED')
  })

  it('of two at once from the same revision keeps one and refuses the other', async () => {
    const first = await catalogue.save(jobCalled('a'))
    const results = await Promise.allSettled(
      ['one', 'two', 'three'].map(complaint => catalogue.save({ ...first, complaint })),
    )
    expect(results.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'rejected'])
    expect((await catalogue.load('a')).complaint).toBe('one')
  })

  it('of fifty changes one after another, asked for at once, keeps them all in order', async () => {
    await catalogue.save(jobCalled('a', '0'))
    let last = Promise.resolve(await catalogue.load('a'))
    for (let number = 1; number <= 50; number += 1)
      last = last.then(job => catalogue.save({ ...job, complaint: `${job.complaint},${number}` }))
    expect((await last).rev).toBe(51)
    expect((await catalogue.load('a')).complaint.split(',')).toHaveLength(51)
  })

  it('of what could not be read again is refused before anything is written', async () => {
    const saved = await catalogue.save(jobCalled('a'))
    const spoilt = { ...saved, complaint: 'x'.repeat(4001) }
    expect((await faultOf(() => catalogue.save(spoilt)))?.code).toBe('REFUSED')
    expect(await catalogue.load('a')).toEqual(saved)
    expect((await faultOf(() => catalogue.save({ ...jobCalled('b'), id: '../b' })))?.code).toBe('NOT_FOUND')
    expect(await readdir(join(folder, 'jobs'))).toEqual(['a'])
  })

  it('over a damaged or deleted file is refused', async () => {
    const file = join(folder, 'jobs', 'a', 'job.json')
    const saved = await catalogue.save(jobCalled('a'))
    await rm(file)
    expect((await faultOf(() => catalogue.save(saved)))?.code).toBe('REFUSED')
    expect((await faultOf(() => catalogue.save(saved)))?.code).toBe('REFUSED')
    await writeFile(file, 'torn')
    expect((await faultOf(() => catalogue.save(saved)))?.code).toBe('DAMAGED')
    expect(await readFile(file, 'utf8')).toBe('torn')
  })

  it('after closing is refused', async () => {
    await catalogue.close()
    expect((await faultOf(() => catalogue.save(jobCalled('a'))))?.code).toBe('READ_ONLY')
  })
})

describe('the trash', () => {
  it('takes a damaged job as it is, and gives back only what is whole and has room', async () => {
    await catalogue.save(jobCalled('a'))
    await writeFile(join(folder, 'jobs', 'a', 'job.json'), 'torn')
    await catalogue.remove('a')
    expect(catalogue.list()).toEqual([])
    expect((await faultOf(() => catalogue.restore('a')))?.code).toBe('DAMAGED')
    expect(await readFile(join(folder, 'trash', 'a', 'job.json'), 'utf8')).toBe('torn')
    await catalogue.save(jobCalled('b', 'first'))
    await catalogue.remove('b')
    await catalogue.save(jobCalled('b', 'namesake'))
    expect((await faultOf(() => catalogue.restore('b')))?.code).toBe('REFUSED')
    await catalogue.remove('b')
    expect((await readdir(join(folder, 'trash'))).toSorted()).toEqual(['a', 'b', 'b.1'])
    expect((await catalogue.restore('b')).complaint).toBe('namesake')
    expect((await faultOf(() => catalogue.remove('never')))?.code).toBe('NOT_FOUND')
  })

  it('is not offered for a job of a newer version', async () => {
    await catalogue.save(jobCalled('a'))
    const newer = JSON.stringify(sealed({ ...(await catalogue.load('a')), schemaVersion: 99 }))
    await writeFile(join(folder, 'jobs', 'a', 'job.json'), newer)
    expect((await faultOf(() => catalogue.remove('a')))?.code).toBe('NEWER_VERSION')
    expect(await readFile(join(folder, 'jobs', 'a', 'job.json'), 'utf8')).toBe(newer)
  })
})

describe('a newer version', () => {
  it('of the catalogue is refused at once, and nothing in it is touched', async () => {
    await catalogue.save(jobCalled('a'))
    await catalogue.close()
    const mark = JSON.stringify(sealed({ schemaVersion: 2, rev: 1, value: {} }))
    await writeFile(join(folder, 'catalogue.json'), mark)
    await writeFile(join(folder, 'jobs', 'a', 'job.json.0123456789ab.tmp'), '')
    const before = await readdir(folder, { recursive: true })
    expect((await faultOf(() => open(folder)))?.code).toBe('NEWER_VERSION')
    expect(await readdir(folder, { recursive: true })).toEqual(before)
    expect(await readFile(join(folder, 'catalogue.json'), 'utf8')).toBe(mark)
  })

  it('of a shard is left as it is', async () => {
    await catalogue.save(jobCalled('a'))
    await catalogue.close()
    const shard = JSON.stringify(sealed({ indexVersion: indexVersion + 1, rev: 9, rows: [] }))
    await writeFile(join(folder, 'index', '2026-03.json'), shard)
    catalogue = await open(folder)
    await saveAgain(catalogue, 'a', 'changed')
    expect(catalogue.list().map(({ complaint }) => complaint)).toEqual(['changed'])
    await catalogue.close()
    expect(await readFile(join(folder, 'index', '2026-03.json'), 'utf8')).toBe(shard)
  })
})

describe('whoever listens', () => {
  it('hears of every change, until it stops listening', async () => {
    const heard: string[] = []
    const stop = catalogue.onChange(change => heard.push(`${change.kind} ${change.id}`))
    await catalogue.save(jobCalled('a'))
    await catalogue.remove('a')
    await catalogue.restore('a')
    await faultOf(() => catalogue.restore('a'))
    stop()
    await saveAgain(catalogue, 'a', 'unheard')
    expect(heard).toEqual(['job a', 'removed a', 'job a'])
  })

  it('in a window that only reads hears of what the other one changes', async () => {
    await catalogue.save(jobCalled('a', 'first'))
    await catalogue.check({ mend: false })
    const reader = await open(folder)
    const heard: string[] = []
    reader.onChange(change => heard.push(`${change.kind} ${change.id}`))
    await saveAgain(catalogue, 'a', 'second')
    await catalogue.save(jobCalled('b'))
    await vi.waitFor(() => expect(heard.toSorted()).toEqual(['job a', 'job b']), 6_000)
    expect(reader.list().find(({ id }) => id === 'a')?.complaint).toBe('second')
    await catalogue.remove('b')
    await vi.waitFor(() => expect(heard).toContain('removed b'), 6_000)
    await reader.close()
    expect(catalogue.readOnly).toBeNull()
  })
})

describe('a disk that cannot be written to', () => {
  it('is opened for reading only, and says so', async () => {
    const { disk } = new SimulatedDisk()
    const first = await open('/catalogue', { disk })
    await first.save(jobCalled('a'))
    await first.close()
    const locked = () => Promise.reject(Object.assign(new Error('read-only'), { code: 'EROFS' }))
    const reader = await open('/catalogue', {
      disk: { ...disk, create: locked, link: locked, rename: locked },
    })
    expect(reader.readOnly).toContain('cannot be written to')
    expect((await reader.load('a')).id).toBe('a')
    expect((await faultOf(() => saveAgain(reader, 'a', 'no')))?.code).toBe('READ_ONLY')
    await reader.close()
  })
})

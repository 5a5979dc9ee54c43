// The catalogue keeps what it acknowledged, tells damage from absence, and lets one process write.
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { layoutById } from '../../../shared/engine/layouts.ts'
import { newJob } from '../../../shared/job/new-job.ts'
import { FaultError } from '../fault.ts'
import { type Catalogue, openCatalogue } from './catalogue.ts'
import { checkCatalogue } from './check.ts'

let folder = ''
let catalogue: Catalogue

const now = '2026-03-02T09:14:00.000Z'
const job = (id: string, complaint = 'Runs rough') => {
  const layout = layoutById('i4')
  if (!layout) throw new Error('no layout')
  return newJob({ id, trayId: 't1', now, complaint, engine: { vehicle: 'Orchard truck' }, layout })
}
const codeOf = async (work: Promise<unknown>) =>
  work.then(
    () => 'done',
    (error: unknown) => (error instanceof FaultError ? error.code : String(error)),
  )

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-catalogue-'))
  catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
})
afterEach(async () => {
  await catalogue.close()
  await rm(folder, { recursive: true, force: true })
})

describe('a catalogue', () => {
  it('gives back what was saved, with a rising revision, also after it was closed', async () => {
    const first = await catalogue.save(job('a'))
    const second = await catalogue.save({ ...first, complaint: 'Burns oil' })
    expect([first.rev, second.rev]).toEqual([1, 2])
    await catalogue.close()
    catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect(await catalogue.load('a')).toEqual(second)
    expect(catalogue.list().map(one => [one.id, one.rev, one.complaint])).toEqual([['a', 2, 'Burns oil']])
  })

  it('lists from the jobs when the index is gone, torn or behind', async () => {
    await catalogue.save(job('a'))
    await catalogue.save(job('b'))
    await catalogue.close()
    await writeFile(join(folder, 'index', '2026-03.json'), '{"half')
    catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect(
      catalogue
        .list()
        .map(one => one.id)
        .toSorted(),
    ).toEqual(['a', 'b'])
    await catalogue.close()
    await rm(join(folder, 'index'), { recursive: true })
    catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect(catalogue.list()).toHaveLength(2)
  })

  it('names a damaged job and never takes it for an empty one', async () => {
    await catalogue.save(job('a'))
    const file = join(folder, 'jobs', 'a', 'job.json')
    const text = await readFile(file, 'utf8')
    for (const broken of ['', text.slice(0, -20), text.replace('Runs rough', 'Runs rougj'), '[]']) {
      await writeFile(file, broken)
      expect(await codeOf(catalogue.load('a'))).toBe('DAMAGED')
      const report = await checkCatalogue(folder, { mend: false })
      expect(report.problems.map(one => [one.file, one.kind])).toContainEqual(['jobs/a/job.json', 'damaged'])
    }
    await rm(file)
    expect(await codeOf(catalogue.load('a'))).toBe('NOT_FOUND')
    expect(await codeOf(catalogue.load('../a'))).toBe('NOT_FOUND')
  })

  it('refuses a job of a newer version and leaves it byte for byte', async () => {
    await catalogue.save(job('a'))
    const file = join(folder, 'jobs', 'a', 'job.json')
    const newer = (await readFile(file, 'utf8')).replace('"schemaVersion":2', '"schemaVersion":99')
    await writeFile(file, newer)
    expect(await codeOf(catalogue.load('a'))).toBe('NEWER_VERSION')
    expect(await readFile(file, 'utf8')).toBe(newer)
  })

  it('does not overwrite what another program wrote since', async () => {
    const saved = await catalogue.save(job('a'))
    await writeFile(join(folder, 'jobs', 'a', 'job.json'), 'foreign words')
    expect(await codeOf(catalogue.save(saved))).toBe('REFUSED')
    expect(await readFile(join(folder, 'jobs', 'a', 'job.json'), 'utf8')).toBe('foreign words')
  })

  it('moves to the trash and back', async () => {
    const saved = await catalogue.save(job('a'))
    await catalogue.remove('a')
    expect(catalogue.list()).toEqual([])
    expect(await codeOf(catalogue.load('a'))).toBe('NOT_FOUND')
    expect(await catalogue.restore('a')).toEqual(saved)
    expect(catalogue.list()).toHaveLength(1)
    expect(await codeOf(catalogue.restore('a'))).toBe('NOT_FOUND')
  })

  it('lets a second opener read only, and says who writes', async () => {
    await catalogue.save(job('a'))
    const second = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect(second.readOnly).toContain(String(process.pid))
    expect((await second.load('a')).complaint).toBe('Runs rough')
    expect(await codeOf(second.save(job('b')))).toBe('READ_ONLY')
    expect(await codeOf(second.remove('a'))).toBe('READ_ONLY')
    expect(await codeOf(second.settings.set(second.settings.get()))).toBe('READ_ONLY')
    await second.close()
    await catalogue.close()
    catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect(catalogue.readOnly).toBeNull()
  })

  it('keeps settings, and falls back to the defaults on a damaged file without touching it', async () => {
    const changed = { ...catalogue.settings.get(), technician: 'R. Example' }
    await catalogue.settings.set(changed)
    await catalogue.close()
    catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect(catalogue.settings.get()).toEqual(changed)
    await writeFile(join(folder, 'settings.json'), '{}')
    await catalogue.close()
    catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect(catalogue.settings.get().technician).toBe('')
    expect(catalogue.settings.problem?.code).toBe('DAMAGED')
    expect(await readFile(join(folder, 'settings.json'), 'utf8')).toBe('{}')
  })

  it('clears away what a killed writer left', async () => {
    await catalogue.save(job('a'))
    await catalogue.close()
    const left = join(folder, 'jobs', 'a', 'job.json.0123456789ab.tmp')
    await writeFile(left, 'half')
    expect((await checkCatalogue(folder, { mend: false })).problems.map(one => one.kind)).toEqual([
      'left-over',
    ])
    await writeFile(join(folder, 'index', '2026-03.json.0123456789ab.tmp'), 'half')
    await mkdir(join(folder, 'jobs', 'begun'))
    catalogue = await openCatalogue(folder, { appVersion: '0.0.0' })
    expect((await checkCatalogue(folder, { mend: false })).problems).toEqual([])
    expect(await readdir(join(folder, 'jobs'))).toEqual(['a'])
  })
})

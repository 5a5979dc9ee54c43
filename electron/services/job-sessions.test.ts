// Jobs of a session when the disk says no: nothing is acknowledged that is not kept, and undo goes on from what is there.
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { layoutById } from '../../shared/engine/layouts.ts'
import type { Command } from '../../shared/job/command-schema.ts'
import { createJobSessions, type JobSessions } from './job-sessions.ts'
import { type Catalogue, openCatalogue } from './store/catalogue.ts'
import { type Disk, realDisk } from './store/disk.ts'

const layout = layoutById('i4-1342')
if (!layout) throw new Error('no layout')
const wanted = { complaint: 'Rough', engine: { vehicle: 'Wagon' }, layout }
const note = (notes: string): Command => ({ command: 'set notes', notes })

let folder = ''
let catalogue: Catalogue
let jobs: JobSessions
/** Called before each step of the disk; throws where the disk is to fail. */
let before: (step: keyof Disk, path: string) => void = () => undefined

const full = () => Object.assign(new Error('no space'), { code: 'ENOSPC' })
const failAt = (step: keyof Disk, part: string) => {
  before = (asked, path) => {
    if (asked !== step || !path.includes(part)) return
    before = () => undefined
    throw full()
  }
}

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-sessions-'))
  const disk: Disk = {
    ...realDisk,
    async create(path) {
      before('create', path)
      return realDisk.create(path)
    },
    async rename(from, to) {
      before('rename', to)
      return realDisk.rename(from, to)
    },
    async syncFolder(path) {
      before('syncFolder', path)
      return realDisk.syncFolder(path)
    },
  }
  catalogue = await openCatalogue(folder, { appVersion: 'test', disk })
  jobs = createJobSessions(catalogue)
})
afterEach(async () => {
  before = () => undefined
  await catalogue.close()
  await rm(folder, { recursive: true, force: true })
})

describe('a change that the disk refuses', () => {
  it.each(['create', 'rename'] as const)('at %s is not kept, and the next one is', async step => {
    const { job } = await jobs.create(wanted)
    const first = await jobs.apply(job.id, note('first'))
    failAt(step, 'job.json')
    await expect(jobs.apply(job.id, note('second'))).rejects.toMatchObject({ code: 'DISK' })
    expect(await jobs.get(job.id)).toEqual(first)
    const third = await jobs.apply(job.id, note('third'))
    expect(third.job).toMatchObject({ notes: 'third', rev: 3 })
    expect((await catalogue.load(job.id)).notes).toBe('third')
    await jobs.undo(job.id)
    expect((await jobs.undo(job.id)).job.notes).toBeUndefined()
  })

  it('that may be on the disk all the same is shown as the disk has it', async () => {
    const { job } = await jobs.create(wanted)
    await jobs.apply(job.id, note('first'))
    failAt('syncFolder', job.id)
    const refused = jobs.apply(job.id, note('second'))
    await expect(refused).rejects.toMatchObject({ code: 'DISK' })
    const { job: shown } = await jobs.get(job.id)
    expect(shown).toEqual(await catalogue.load(job.id))
    const after = await jobs.apply(job.id, note('third'))
    expect(after.job.rev).toBeGreaterThan(shown.rev ?? 0)
  })

  it('does not stop the one that waits behind it', async () => {
    const { job } = await jobs.create(wanted)
    failAt('create', 'job.json')
    const results = await Promise.allSettled([
      jobs.apply(job.id, note('refused')),
      jobs.apply(job.id, note('kept')),
    ])
    expect(results.map(({ status }) => status)).toEqual(['rejected', 'fulfilled'])
    expect((await jobs.get(job.id)).job.notes).toBe('kept')
  })
})

describe('a change that the job refuses', () => {
  it('leaves job and undo as they were', async () => {
    const { job } = await jobs.create(wanted)
    const unchanged = await jobs.apply(job.id, note('first'))
    const unknown: Command = { command: 'void pull', pullId: 'nobody', reason: 'misread' }
    await expect(jobs.apply(job.id, unknown)).rejects.toMatchObject({ code: 'REFUSED' })
    expect(await jobs.get(job.id)).toEqual(unchanged)
  })
})

describe('a duplicate', () => {
  it('of an invented job is invented too', async () => {
    const { job } = await jobs.create(wanted, true)
    expect((await jobs.duplicate(job.id)).job.demo).toBe(true)
    const { job: real } = await jobs.create(wanted)
    expect((await jobs.duplicate(real.id)).job.demo).toBeUndefined()
  })
})

// The last five versions before the current one stay, each whole, and a damaged job says which one could take its place.
import { mkdtemp, readdir, readFile, rm, writeFile, copyFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { faultOf, jobCalled, open, saveAgain } from '../../../tests/faults/storage/example.ts'
import { SimulatedDisk } from '../../../tests/faults/storage/simulated-disk.ts'
import type { Catalogue } from './catalogue.ts'
import { readStoredJob } from './job-file.ts'
import { versionsAmong } from './job-versions.ts'

let folder = ''
let catalogue: Catalogue
const inJob = (name: string) => join(folder, 'jobs', 'a', name)

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-versions-'))
  catalogue = await open(folder)
  await catalogue.save(jobCalled('a', 'revision 1'))
  for (let rev = 2; rev <= 8; rev += 1) await saveAgain(catalogue, 'a', `revision ${rev}`)
})
afterEach(async () => {
  await catalogue.close()
  await rm(folder, { recursive: true, force: true })
})

describe('previous versions', () => {
  it('are the last five, each as it was acknowledged', async () => {
    const revs = versionsAmong(await readdir(join(folder, 'jobs', 'a')))
    expect(revs).toEqual([3, 4, 5, 6, 7])
    for (const rev of revs) {
      const job = readStoredJob(await readFile(inJob(`job.${rev}.json`)), 'x')
      expect([job.rev, job.complaint]).toEqual([rev, `revision ${rev}`])
    }
  })

  it('are named by a job that is damaged or missing, the newest whole one first', async () => {
    await writeFile(inJob('job.json'), 'torn')
    expect((await faultOf(() => catalogue.load('a')))?.fault.hint).toContain('jobs/a/job.7.json')
    await writeFile(inJob('job.7.json'), 'torn too')
    expect((await faultOf(() => catalogue.load('a')))?.fault.hint).toContain('jobs/a/job.6.json')
    await rm(inJob('job.json'))
    const missing = await faultOf(() => catalogue.load('a'))
    expect([missing?.code, missing?.fault.hint]).toEqual([
      'NOT_FOUND',
      expect.stringContaining('jobs/a/job.6.json'),
    ])
    const { problems } = await catalogue.check({ mend: true })
    expect(problems.map(({ file, kind }) => [file, kind])).toEqual([
      ['jobs/a/job.7.json', 'damaged'],
      ['jobs/a/job.json', 'missing'],
    ])
    expect(await readFile(inJob('job.7.json'), 'utf8')).toBe('torn too')
  })

  it('can be put back by hand: work goes on above every revision there was, and none is lost', async () => {
    await catalogue.close()
    await copyFile(inJob('job.5.json'), inJob('job.json'))
    catalogue = await open(folder)
    expect((await catalogue.load('a')).complaint).toBe('revision 5')
    expect((await saveAgain(catalogue, 'a', 'after going back')).rev).toBe(8)
    expect(versionsAmong(await readdir(join(folder, 'jobs', 'a')))).toEqual([3, 4, 5, 6, 7])
  })

  it('are copies where the file system has no links', async () => {
    const { disk } = new SimulatedDisk()
    const noLinks = {
      ...disk,
      link: () => Promise.reject(Object.assign(new Error('no links'), { code: 'EPERM' })),
    }
    const other = await open('/catalogue', { disk: noLinks })
    expect(other.readOnly).toBeNull()
    await other.save(jobCalled('a', 'first'))
    await saveAgain(other, 'a', 'second')
    const previous = readStoredJob(await disk.read('/catalogue/jobs/a/job.1.json'), 'x')
    expect(previous.complaint).toBe('first')
    await other.close()
    const again = await open('/catalogue', { disk: noLinks })
    expect([again.readOnly, (await again.load('a')).complaint]).toEqual([null, 'second'])
    await again.close()
  })
})

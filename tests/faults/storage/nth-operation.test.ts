// Whatever operation of the disk fails: one clear error, memory like the disk, and all is well again once the cause is gone.
import { describe, expect, it } from 'vitest'
import type { Catalogue } from '../../../electron/services/store/catalogue.ts'
import { faultOf, jobCalled, open, saveAgain } from './example.ts'
import { type FailingDisk, failingDisk, type Plan } from './failing-disk.ts'
import { SimulatedDisk } from './simulated-disk.ts'

const folder = '/catalogue'
const codes = ['ENOSPC', 'EIO', 'EACCES', 'EROFS', 'ENOENT']
const modes = ['once', 'from then on'] as const
/** No action takes anywhere near as many operations. */
const tooMany = 200

type Action = {
  name: string
  /** What the action is to do, and once more after it failed. */
  act: (catalogue: Catalogue) => Promise<unknown>
  isDone: (catalogue: Catalogue) => Promise<boolean>
}

const complaintOf = async (catalogue: Catalogue, id: string) =>
  catalogue.has(id) ? (await catalogue.load(id)).complaint : null

const actions: Action[] = [
  {
    name: 'save',
    act: catalogue => saveAgain(catalogue, 'a', 'changed'),
    isDone: async catalogue => (await complaintOf(catalogue, 'a')) === 'changed',
  },
  {
    name: 'create',
    act: catalogue => catalogue.save(jobCalled('new', 'new')),
    isDone: async catalogue => (await complaintOf(catalogue, 'new')) === 'new',
  },
  {
    name: 'remove',
    act: catalogue => catalogue.remove('a'),
    isDone: async catalogue => !catalogue.has('a') && (await faultOf(() => catalogue.load('a'))) !== null,
  },
  {
    name: 'restore',
    act: catalogue => catalogue.restore('gone'),
    isDone: async catalogue => (await complaintOf(catalogue, 'gone')) === 'gone runs rough',
  },
  {
    name: 'settings',
    act: catalogue => catalogue.settings.set({ ...catalogue.settings.get(), technician: 'Ana' }),
    isDone: async catalogue => catalogue.settings.get().technician === 'Ana',
  },
]

async function prepared(): Promise<{ disk: FailingDisk; catalogue: Catalogue }> {
  const disk = failingDisk(new SimulatedDisk().disk)
  const catalogue = await open(folder, { disk: disk.disk })
  for (const id of ['a', 'b', 'gone']) await catalogue.save(jobCalled(id))
  await saveAgain(catalogue, 'a', 'a runs rough')
  await catalogue.remove('gone')
  await catalogue.check({ mend: false })
  return { disk, catalogue }
}

/** All that a catalogue shows, one as it is in memory and one read afresh from the disk. */
const shown = async (catalogue: Catalogue) => ({
  list: catalogue.list().toSorted((a, b) => (a.id < b.id ? -1 : 1)),
  jobs: await Promise.all(catalogue.list().map(({ id }) => catalogue.load(id))).then(jobs =>
    jobs.toSorted((a, b) => (a.id < b.id ? -1 : 1)),
  ),
  settings: catalogue.settings.get(),
})

async function expectLikeTheDisk(catalogue: Catalogue, disk: FailingDisk): Promise<void> {
  const afresh = await open(folder, { disk: disk.disk })
  expect(afresh.readOnly).not.toBeNull()
  expect(await shown(catalogue)).toEqual(await shown(afresh))
  await afresh.close()
}

/** Half a request for the lock could be somebody's who is still writing it: it stays for a minute. */
const tornRequest = /^lock\.[0-9a-f]{12}\.tmp$/

async function expectNoProblem(catalogue: Catalogue): Promise<void> {
  const { problems } = await catalogue.check({ mend: false })
  expect(problems.filter(({ file }) => !tornRequest.test(file))).toEqual([])
}

/** False when the action got through before the planned operation came. */
async function tryPlan(action: Action, plan: Plan): Promise<boolean> {
  const { disk, catalogue } = await prepared()
  disk.arm(plan)
  const fault = await faultOf(() => action.act(catalogue))
  const failures = disk.failures()
  disk.disarm()
  if (failures === 0) {
    expect(fault).toBeNull()
    await catalogue.close()
    return false
  }
  if (fault) {
    // A file that seems gone may also be told as such.
    expect(plan.code === 'ENOENT' ? ['DISK', 'NOT_FOUND'] : ['DISK']).toContain(fault.code)
    expect(fault.fault.what).not.toBe('')
    expect(fault.fault.hint).not.toBe('')
    expect(fault.message).not.toContain(folder)
  }
  await catalogue.settle()
  await expectLikeTheDisk(catalogue, disk)
  // Only a fault that no promise depends on may pass in silence.
  if (!fault) expect(await action.isDone(catalogue)).toBe(true)
  if (!(await action.isDone(catalogue))) await action.act(catalogue)
  expect(await action.isDone(catalogue)).toBe(true)
  await expectLikeTheDisk(catalogue, disk)
  await catalogue.close()

  const later = await open(folder, { disk: disk.disk })
  expect(later.readOnly).toBeNull()
  expect(await action.isDone(later)).toBe(true)
  await expectNoProblem(later)
  await later.close()
  return true
}

describe.each(actions)('the n-th operation of "$name" fails', action => {
  it.each(codes.flatMap(code => modes.map(mode => ({ code, mode }))))(
    '$code, $mode',
    async ({ code, mode }) => {
      let at = 1
      while (at < tooMany && (await tryPlan(action, { at, code, mode }))) at += 1
      // At least creating, writing, flushing and naming the file, or the moves of a folder, were tried.
      expect(at).toBeGreaterThan(3)
      expect(at).toBeLessThan(tooMany)
    },
  )
})

describe('the n-th operation of opening fails', () => {
  it.each(codes)('%s', async code => {
    for (const mode of modes)
      for (let at = 1, isHit = true; isHit; at += 1) {
        const { disk, catalogue } = await prepared()
        await catalogue.close()
        disk.arm({ at, code, mode })
        let opened: Catalogue | null = null
        const fault = await faultOf(async () => {
          opened = await open(folder, { disk: disk.disk })
        })
        isHit = disk.failures() > 0
        disk.disarm()
        if (fault) expect(['DISK', 'NOT_FOUND', 'READ_ONLY']).toContain(fault.code)
        await (opened as Catalogue | null)?.close()
        const later = await open(folder, { disk: disk.disk })
        expect(later.readOnly).toBeNull()
        expect(
          later
            .list()
            .map(({ id }) => id)
            .toSorted(),
        ).toEqual(['a', 'b'])
        await expectNoProblem(later)
        await later.close()
        expect(at).toBeLessThan(tooMany)
      }
  })
})

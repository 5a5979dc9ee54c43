// Whatever operation of the disk fails: one clear error, memory like the disk, and all is well again once the cause is gone.
import { afterAll, describe, expect, it } from 'vitest'
import type { Catalogue } from '../../../electron/services/store/catalogue.ts'
import { faultOf, jobCalled, saveAgain } from './example.ts'
import type { Plan } from './failing-disk.ts'
import { type Action, type Tried, tryAction, tryOpening } from './nth-operation.ts'

const codes = ['ENOSPC', 'EIO', 'EACCES', 'EROFS', 'ENOENT']
const modes = ['once', 'from then on'] as const
/** Nothing takes anywhere near as many operations. */
const tooMany = 300

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

let tried = 0
afterAll(() => console.log(`failing disk: ${tried} operations made to fail`))

/** Lets operation 1, 2, 3... fail until the work gets through; gives what was wrong, and how many failed. */
async function everyOperation(work: (plan: Plan) => Promise<Tried>, plan: Omit<Plan, 'at'>) {
  const wrong: string[] = []
  for (let at = 1; at < tooMany; at += 1) {
    const result = await work({ ...plan, at })
    wrong.push(...result.wrong.map(one => `operation ${at}: ${one}`))
    if (!result.isHit) return { wrong, hits: at - 1 }
    tried += 1
  }
  return { wrong: [...wrong, 'no end of operations'], hits: tooMany }
}

const plans = codes.flatMap(code => modes.map(mode => ({ code, mode })))

describe.each(actions)('the n-th operation of "$name" fails', action => {
  it.each(plans)('$code, $mode', async plan => {
    const { wrong, hits } = await everyOperation(one => tryAction(action, one), plan)
    expect(wrong).toEqual([])
    // At least the move of a folder and its two flushes.
    expect(hits).toBeGreaterThanOrEqual(3)
  })
})

describe('the n-th operation of opening fails', () => {
  it.each(plans)('$code, $mode', async plan => {
    const { wrong, hits } = await everyOperation(tryOpening, plan)
    expect(wrong).toEqual([])
    expect(hits).toBeGreaterThanOrEqual(3)
  })
})

// Lets one operation of the disk fail during an action and says in words what is not as it must be afterwards.
import { isDeepStrictEqual } from 'node:util'
import type { FaultError } from '../../../electron/services/fault.ts'
import type { Catalogue } from '../../../electron/services/store/catalogue.ts'
import { faultOf, jobCalled, open, saveAgain } from './example.ts'
import { type FailingDisk, failingDisk, type Plan } from './failing-disk.ts'
import { SimulatedDisk } from './simulated-disk.ts'

const folder = '/catalogue'

export type Action = {
  name: string
  /** What is tried, and once more after it failed. */
  act: (catalogue: Catalogue) => Promise<unknown>
  isDone: (catalogue: Catalogue) => Promise<boolean>
}

/** `isHit` is false when the action got through before the planned operation came. */
export type Tried = { isHit: boolean; wrong: string[] }

async function prepared(): Promise<{ disk: FailingDisk; catalogue: Catalogue }> {
  const disk = failingDisk(new SimulatedDisk().disk)
  const catalogue = await open(folder, { disk: disk.disk })
  for (const id of ['a', 'b', 'gone']) await catalogue.save(jobCalled(id))
  await saveAgain(catalogue, 'a', 'a runs rough')
  await catalogue.remove('gone')
  await catalogue.check({ mend: false })
  return { disk, catalogue }
}

const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1)

/** All that a catalogue shows. */
async function shown(catalogue: Catalogue) {
  const list = catalogue.list().toSorted(byId)
  const jobs = await Promise.all(list.map(({ id }) => catalogue.load(id)))
  return { list, jobs, settings: catalogue.settings.get() }
}

/** A second look through fresh eyes: the lock is held, so it only reads. */
async function differsFromDisk(catalogue: Catalogue, disk: FailingDisk): Promise<string[]> {
  const afresh = await open(folder, { disk: disk.disk })
  const isSame = isDeepStrictEqual(await shown(catalogue), await shown(afresh))
  await afresh.close()
  return [
    ...(afresh.readOnly === null ? ['the lock was lost'] : []),
    ...(isSame ? [] : ['memory and disk differ']),
  ]
}

/** Half a request for the lock could be somebody's who is still writing it: it stays for a minute. */
const tornRequest = /^lock\.[0-9a-f]{12}\.tmp$/

async function problemsOf(catalogue: Catalogue): Promise<string[]> {
  const { problems } = await catalogue.check({ mend: false })
  return problems
    .filter(({ file }) => !tornRequest.test(file))
    .map(({ file, kind }) => `check says ${file} is ${kind}`)
}

function unclear(fault: FaultError | null, allowed: readonly string[]): string[] {
  if (!fault) return []
  const { what, hint } = fault.fault
  return [
    ...(allowed.includes(fault.code) ? [] : [`fault ${fault.code}: ${fault.message}`]),
    ...(what === '' || hint === '' ? ['the fault does not say what happened and what to do'] : []),
    ...(fault.message.includes(folder) ? [`the fault tells a path outside: ${fault.message}`] : []),
  ]
}

export async function tryAction(action: Action, plan: Plan): Promise<Tried> {
  const { disk, catalogue } = await prepared()
  disk.arm(plan)
  const fault = await faultOf(() => action.act(catalogue))
  const isHit = disk.failures() > 0
  disk.disarm()
  // A file that seems gone may also be told as such.
  const wrong = unclear(fault, plan.code === 'ENOENT' ? ['DISK', 'NOT_FOUND'] : ['DISK'])
  if (fault && !isHit) wrong.push('a fault without a cause')
  await catalogue.settle()
  wrong.push(...(await differsFromDisk(catalogue, disk)))
  const isDone = await action.isDone(catalogue)
  // Only what no promise depends on may fail in silence.
  if (!fault && !isDone) wrong.push('acknowledged, but not done')
  if (!isDone) await action.act(catalogue)
  if (!(await action.isDone(catalogue))) wrong.push('did not work once the cause was gone')
  wrong.push(...(await differsFromDisk(catalogue, disk)))
  await catalogue.close()

  const later = await open(folder, { disk: disk.disk })
  if (later.readOnly !== null) wrong.push(`the next start only reads: ${later.readOnly}`)
  if (!(await action.isDone(later))) wrong.push('lost at the next start')
  wrong.push(...(await problemsOf(later)))
  await later.close()
  return { isHit, wrong }
}

export async function tryOpening(plan: Plan): Promise<Tried> {
  const { disk, catalogue } = await prepared()
  await catalogue.close()
  disk.arm(plan)
  const opened: Catalogue[] = []
  const fault = await faultOf(async () => opened.push(await open(folder, { disk: disk.disk })))
  const isHit = disk.failures() > 0
  disk.disarm()
  const wrong = unclear(fault, ['DISK', 'NOT_FOUND', 'READ_ONLY'])
  for (const one of opened) await one.close()
  const later = await open(folder, { disk: disk.disk })
  if (later.readOnly !== null) wrong.push(`the next start only reads: ${later.readOnly}`)
  const ids = later
    .list()
    .toSorted(byId)
    .map(({ id }) => id)
  if (ids.join() !== 'a,b') wrong.push(`the list holds ${ids.join()}`)
  wrong.push(...(await problemsOf(later)))
  await later.close()
  return { isHit, wrong }
}

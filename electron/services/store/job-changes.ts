// What changes jobs: save, remove, restore. Each is durable when it returns, and after a failure the list is as the disk has it.
import type { Job } from '../../../shared/job/job-schema.ts'
import { FaultError } from '../fault.ts'
import type { Doubts } from './doubts.ts'
import type { JobIndex, ListChange } from './job-index.ts'
import type { FiledJob, JobStore } from './job-store.ts'
import type { Trash } from './trash.ts'
import { turns } from './turns.ts'

export type JobChanges = {
  save: (job: Job) => Promise<Job>
  remove: (id: string) => Promise<void>
  restore: (id: string) => Promise<Job>
  /** When everything under way has ended, well or not. */
  settled: () => Promise<void>
}

type Parts = {
  index: JobIndex
  jobs: JobStore
  trash: Trash
  doubts: Doubts
  /** Throws READ_ONLY. */
  writable: () => Promise<void>
  tell: (change: ListChange) => void
}

const codeOf = (error: unknown): string => (error instanceof FaultError ? error.code : '')

export function jobChanges({ index, jobs, trash, doubts, writable, tell }: Parts): JobChanges {
  const inTurn = turns()
  const running = new Set<Promise<unknown>>()

  /** Takes into the list what the disk holds of a job. False while the disk does not answer. */
  async function look(id: string): Promise<boolean> {
    jobs.forget(id)
    try {
      index.remember(await jobs.load(id))
      return true
    } catch (error) {
      if (codeOf(error) === 'DISK') return false
    }
    try {
      // One that is merely missing stays in the list, and is said to be missing.
      if (await trash.has(id)) index.drop(id)
      return true
    } catch {
      return false
    }
  }

  /** Changes of one job are made in the order they were asked for. */
  const change = <T>(id: string, work: () => Promise<T>): Promise<T> =>
    inTurn(id, async () => {
      await writable()
      try {
        return await work()
      } catch (error) {
        if (!(await look(id))) doubts.add(`job ${id}`, () => look(id))
        throw error
      }
    })
  const tracked = <T>(run: Promise<T>): Promise<T> => {
    const ended: Promise<unknown> = Promise.allSettled([run]).then(() => running.delete(ended))
    running.add(ended)
    return run
  }

  const filed = (kept: FiledJob): Job => {
    index.remember(kept)
    tell({ kind: 'job', id: kept.job.id, rev: kept.job.rev ?? 0 })
    return kept.job
  }

  async function remove(id: string): Promise<void> {
    try {
      await jobs.load(id)
    } catch (error) {
      // A damaged job may go to the trash as it is; of a missing one whatever is left goes there.
      const mayGo = codeOf(error) === 'DAMAGED' || (codeOf(error) === 'NOT_FOUND' && index.has(id))
      if (!mayGo) throw error
    }
    await jobs.alone(id, () => trash.put(id))
    jobs.forget(id)
    index.drop(id)
    tell({ kind: 'removed', id })
  }

  async function restore(id: string): Promise<Job> {
    await jobs.alone(id, () => trash.takeOut(id))
    return filed(await jobs.load(id))
  }

  return {
    save: job => tracked(change(job.id, async () => filed(await jobs.save(job)))),
    remove: id => tracked(change(id, () => remove(id))),
    restore: id => tracked(change(id, () => restore(id))),
    async settled() {
      await Promise.all(running)
    },
  }
}

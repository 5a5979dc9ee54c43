// Removing a job and bringing it back: its whole folder moves between jobs/ and trash/, nothing is deleted.
import { join } from 'node:path'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { readStoredJob } from './job-file.ts'
import { isJobId } from './job-store.ts'

export type Trash = {
  has: (id: string) => Promise<boolean>
  /** Durable when it returns. Does nothing for a job that has no folder. */
  put: (id: string) => Promise<void>
  /** Durable when it returns. Throws NOT_FOUND, REFUSED, DAMAGED, NEWER_VERSION: the job then stays in the trash. */
  takeOut: (id: string) => Promise<void>
}

export function openTrash(disk: Disk, folder: string): Trash {
  const at = (...parts: string[]) => join(folder, ...parts)

  async function move(id: string, from: string, to: string): Promise<void> {
    await onDisk(`${from}/${id}`, async () => {
      await disk.rename(at(from, id), at(to, id))
      try {
        await disk.syncFolder(at(to))
        await disk.syncFolder(at(from))
      } catch (error) {
        // Moved, but perhaps not for good: nobody was told that it is, so it goes back.
        await disk.rename(at(to, id), at(from, id)).catch(() => undefined)
        throw error
      }
    })
  }

  /** A place in the trash that an earlier job of the same id has taken is made free; that job is kept beside it. */
  async function makeRoom(id: string): Promise<void> {
    for (let number = 1; await disk.isFolder(at('trash', id)); number += 1)
      if (!(await disk.isFolder(at('trash', `${id}.${number}`))))
        await disk.rename(at('trash', id), at('trash', `${id}.${number}`))
  }

  return {
    has: async id => isJobId(id) && disk.isFolder(at('trash', id)),
    async put(id) {
      if (!(await onDisk(`jobs/${id}`, () => disk.isFolder(at('jobs', id))))) return
      await onDisk(`trash/${id}`, () => makeRoom(id))
      await move(id, 'jobs', 'trash')
    },
    async takeOut(id) {
      const name = `trash/${id}/job.json`
      const isThere = isJobId(id) && (await onDisk(name, () => disk.isFolder(at('trash', id))))
      if (!isThere)
        throw new FaultError('NOT_FOUND', {
          what: 'This job is not in the trash.',
          where: `job ${id}`,
          hint: 'It may be restored already.',
        })
      if ((await onDisk(name, () => disk.stamp(at(name)))) === null)
        throw new FaultError('NOT_FOUND', {
          what: 'The file of this job is missing.',
          where: name,
          hint: 'Put a copy of its newest previous version in its place, or restore it from a backup.',
        })
      readStoredJob(await onDisk(name, () => disk.read(at(name))), name)
      if (await onDisk(`jobs/${id}`, () => disk.isFolder(at('jobs', id))))
        throw new FaultError('REFUSED', {
          what: 'There is another job of this id in the list.',
          where: `jobs/${id}`,
          hint: 'Remove that one first; both are kept.',
        })
      await move(id, 'trash', 'jobs')
    },
  }
}

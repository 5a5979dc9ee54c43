// A disk whose n-th operation fails, once or from then on, with a code of the operating system.
import type { Disk } from '../../../electron/services/store/disk.ts'

export type Plan = { at: number; code: string; mode: 'once' | 'from then on' }

export type FailingDisk = {
  disk: Disk
  /** Counts operations from now on and lets the planned ones fail. */
  arm: (plan: Plan) => void
  disarm: () => void
  /** Times an operation was made to fail since it was armed. */
  failures: () => number
}

/** Full, faulty, forbidden and locked disks still read; these operations write. */
const writing = new Set([
  'create',
  'write',
  'sync',
  'rename',
  'link',
  'makeFolder',
  'syncFolder',
  'remove',
  'removeTree',
])
/** A disk that is going fails at anything. */
const anything = new Set(['EIO', 'ENOENT'])

export function failingDisk(base: Disk): FailingDisk {
  let plan: Plan | null = null
  let count = 0
  let failed = 0

  const may = (operation: string): void => {
    if (!plan || !(anything.has(plan.code) || writing.has(operation))) return
    count += 1
    if (plan.mode === 'once' ? count !== plan.at : count < plan.at) return
    failed += 1
    throw Object.assign(new Error(`${plan.code}: made to fail`), { code: plan.code })
  }
  const guarded =
    <A extends unknown[], R>(operation: string, work: (...given: A) => Promise<R>) =>
    async (...given: A): Promise<R> => {
      may(operation)
      return work(...given)
    }

  return {
    disk: {
      read: guarded('read', base.read),
      list: guarded('list', base.list),
      stamp: guarded('stamp', base.stamp),
      isFolder: guarded('isFolder', base.isFolder),
      rename: guarded('rename', base.rename),
      link: guarded('link', base.link),
      makeFolder: guarded('makeFolder', base.makeFolder),
      syncFolder: guarded('syncFolder', base.syncFolder),
      remove: guarded('remove', base.remove),
      removeTree: guarded('removeTree', base.removeTree),
      async create(path) {
        may('create')
        const file = await base.create(path)
        return {
          write: async bytes => {
            // A full disk takes some of it.
            await file.write(bytes.subarray(0, bytes.length >> 1))
            may('write')
            await file.write(bytes.subarray(bytes.length >> 1))
          },
          sync: guarded('sync', file.sync),
          close: file.close,
        }
      },
    },
    arm(next) {
      plan = next
      count = 0
      failed = 0
    },
    disarm() {
      plan = null
    },
    failures: () => failed,
  }
}

// A window that only reads follows the one that writes: it looks at the index shards and, when one changed, at the jobs.
import { join } from 'node:path'
import type { Disk } from './disk.ts'
import type { JobIndex, ListChange } from './job-index.ts'

const everyMs = 2_000

/** Returns how to stop. A look that fails (disk gone for a moment) is made again at the next turn. */
export function followWriter(
  disk: Disk,
  indexFolder: string,
  index: JobIndex,
  tell: (change: ListChange) => void,
): () => void {
  const state = async (): Promise<string> => {
    const names = await disk.list(indexFolder)
    const stamps = await Promise.all(names.map(name => disk.stamp(join(indexFolder, name))))
    return JSON.stringify(names.map((name, i) => [name, stamps[i]]))
  }
  let seen = state().catch(() => '')
  let looking = false
  const look = async () => {
    const now = await state()
    if (now === (await seen)) return
    seen = Promise.resolve(now)
    for (const change of await index.scan()) tell(change)
  }
  const timer = setInterval(() => {
    if (looking) return
    looking = true
    void look()
      .catch(() => undefined)
      .finally(() => {
        looking = false
      })
  }, everyMs)
  timer.unref()
  return () => clearInterval(timer)
}

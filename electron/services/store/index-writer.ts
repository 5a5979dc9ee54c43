// Writes the shards of the index a moment after the jobs they list: an index may be lost, a job may not.
import type { Disk } from './disk.ts'
import { type IndexEntry, shardOf, type Shards, writeShard } from './index-shards.ts'

export type IndexWriter = {
  /** What the shards on disk are like now; those that are unreadable are written again. */
  found: (shards: Shards) => void
  /** The shard that holds this entry is to be written. */
  touch: (entry: IndexEntry | undefined) => void
  flush: () => Promise<void>
  close: () => Promise<void>
}

const pauseMs = 300

/** With `mayWrite` false nothing is ever written. */
export function indexWriter(
  disk: Disk,
  folder: string,
  mayWrite: boolean,
  entries: () => Iterable<IndexEntry>,
): IndexWriter {
  const stale = new Set<string>()
  let newer: ReadonlySet<string> = new Set()
  let revs = new Map<string, number>()
  let timer: NodeJS.Timeout | undefined
  let writing: Promise<void> = Promise.resolve()

  async function write(): Promise<void> {
    for (const name of stale) {
      stale.delete(name)
      const rev = (revs.get(name) ?? 0) + 1
      try {
        await writeShard(disk, folder, name, entries(), rev)
        revs.set(name, rev)
      } catch {
        // With the next change again; until then a shard that is behind is found and made anew at the next start.
        stale.add(name)
        return
      }
    }
  }
  async function flush(): Promise<void> {
    clearTimeout(timer)
    timer = undefined
    const before = writing
    writing = (async () => {
      await before
      await write()
    })()
    await writing
  }
  const add = (name: string) => {
    if (!mayWrite || newer.has(name)) return
    stale.add(name)
    timer ??= setTimeout(() => void flush(), pauseMs)
    timer.unref()
  }

  return {
    found(shards) {
      newer = shards.newer
      revs = shards.revs
      for (const name of shards.unreadable) add(name)
    },
    touch(entry) {
      if (entry) add(shardOf(entry.summary))
    },
    flush,
    close: flush,
  }
}

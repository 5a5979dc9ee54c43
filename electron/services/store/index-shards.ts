// The job list on disk: index/<yyyy-mm>.json, small shards of summaries by month of creation. Only a convenience:
// every entry remembers the job file it was made from, and one that no longer matches is made anew.
import { join } from 'node:path'
import { z } from 'zod'
import { type JobSummary, jobSummarySchema } from '../../../shared/contract/summary-schema.ts'
import type { Disk, FileStamp } from './disk.ts'
import { replaceFile } from './durable-file.ts'

export const indexVersion = 1

const entrySchema = z.strictObject({
  summary: jobSummarySchema,
  /** The job file as it was when the summary was made. */
  file: z.strictObject({ mtimeMs: z.number(), size: z.number() }),
})
const shardSchema = z.strictObject({ indexVersion: z.literal(indexVersion), entries: z.array(entrySchema) })

export type IndexEntry = { summary: JobSummary; file: FileStamp }

export const sameStamp = (a: FileStamp, b: FileStamp): boolean => a.mtimeMs === b.mtimeMs && a.size === b.size

export const shardOf = (summary: JobSummary): string => `${summary.createdAt.slice(0, 7)}.json`

/** Every readable entry, by job id; a torn or outdated shard counts as empty, since it can be made anew. */
export async function readShards(
  disk: Disk,
  folder: string,
): Promise<{ entries: Map<string, IndexEntry>; unreadable: string[] }> {
  const entries = new Map<string, IndexEntry>()
  const unreadable: string[] = []
  if (!(await disk.isFolder(folder))) return { entries, unreadable }
  for (const name of await disk.list(folder)) {
    if (!/^\d{4}-\d{2}\.json$/.test(name)) continue
    try {
      const shard = shardSchema.parse(JSON.parse((await disk.read(join(folder, name))).toString('utf8')))
      for (const entry of shard.entries) entries.set(entry.summary.id, entry)
    } catch {
      unreadable.push(name)
    }
  }
  return { entries, unreadable }
}

/** Writes the shards named, each from the entries that belong in it; an empty one is removed. */
export async function writeShards(
  disk: Disk,
  folder: string,
  entries: ReadonlyMap<string, IndexEntry>,
  names: ReadonlySet<string>,
): Promise<void> {
  for (const name of names) {
    const mine = [...entries.values()].filter(entry => shardOf(entry.summary) === name)
    const path = join(folder, name)
    if (mine.length === 0) {
      if ((await disk.stamp(path)) !== null) await disk.remove(path)
    } else await replaceFile(disk, path, Buffer.from(JSON.stringify({ indexVersion, entries: mine })))
  }
}

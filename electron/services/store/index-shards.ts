// The job list on disk: index/<yyyy-mm>.json, small shards of summaries by month of creation. Only a convenience:
// every entry remembers the job file it was made from, and one that no longer matches is made anew.
import { join } from 'node:path'
import { z } from 'zod'
import { type JobSummary, jobSummarySchema } from '../../../shared/contract/summary-schema.ts'
import { openSealed, sealed } from './content-hash.ts'
import type { Disk, FileStamp } from './disk.ts'
import { replaceFile } from './durable-file.ts'

/** Rises whenever a summary is made differently, so that every shard is then made anew. */
export const indexVersion = 2

const entrySchema = z.strictObject({
  summary: jobSummarySchema,
  /** The job file as it was when the summary was made. */
  file: z.strictObject({ mtimeMs: z.number(), size: z.number(), ino: z.number() }),
})
const shardSchema = z.strictObject({
  indexVersion: z.literal(indexVersion),
  rev: z.int(),
  hash: z.string(),
  entries: z.array(entrySchema),
})

export type IndexEntry = { summary: JobSummary; file: FileStamp }

export type Shards = {
  /** By job id. */
  entries: Map<string, IndexEntry>
  /** Revision of each shard that could be read. */
  revs: Map<string, number>
  /** Torn, altered or outdated: they count as empty, since they can be made anew. */
  unreadable: string[]
  /** Written by a newer version, which will want them as they are. */
  newer: Set<string>
}

const shardName = /^\d{4}-\d{2}\.json$/

export const shardOf = (summary: JobSummary): string => `${summary.createdAt.slice(0, 7)}.json`

/** Every entry that can be read. */
export async function readShards(disk: Disk, folder: string): Promise<Shards> {
  const shards: Shards = { entries: new Map(), revs: new Map(), unreadable: [], newer: new Set() }
  if (!(await disk.isFolder(folder))) return shards
  for (const name of await disk.list(folder)) {
    if (!shardName.test(name)) continue
    const opened = openSealed(await disk.read(join(folder, name)), 'indexVersion', indexVersion)
    const shard = 'document' in opened ? shardSchema.safeParse(opened.document) : null
    if ('newer' in opened) shards.newer.add(name)
    else if (shard?.success !== true) shards.unreadable.push(name)
    else {
      shards.revs.set(name, shard.data.rev)
      for (const entry of shard.data.entries) shards.entries.set(entry.summary.id, entry)
    }
  }
  return shards
}

/** Writes one shard from the entries that belong in it; one without entries is removed. */
export async function writeShard(
  disk: Disk,
  folder: string,
  name: string,
  entries: Iterable<IndexEntry>,
  rev: number,
): Promise<void> {
  const mine = [...entries].filter(entry => shardOf(entry.summary) === name)
  const path = join(folder, name)
  if (mine.length > 0)
    await replaceFile(disk, path, Buffer.from(JSON.stringify(sealed({ indexVersion, rev, entries: mine }))))
  else if ((await disk.stamp(path)) !== null) await disk.remove(path)
}

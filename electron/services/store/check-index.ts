// Holds the index shards against the jobs they are made from, and makes those anew that do not match.
import type { Checking } from './checking.ts'
import type { CheckedJobs } from './check-jobs.ts'
import { type IndexEntry, readShards, shardOf, type Shards, writeShard } from './index-shards.ts'
import { jobName } from './job-store.ts'
import { sameStamp } from './same-stamp.ts'
import { isLeftOver } from './durable-file.ts'

const looks = 3

export async function checkIndex(checking: Checking, jobs: CheckedJobs): Promise<void> {
  const { disk, at, mend } = checking
  let shards = await readShards(disk, at('index'))
  let stale = await staleAmong(checking, shards, jobs)
  // A change of a moment ago may not have reached the index yet.
  for (let look = 0; stale.size > 0 && look < looks; look += 1) {
    await checking.untilIndexed()
    shards = await readShards(disk, at('index'))
    stale = await staleAmong(checking, shards, jobs)
  }
  const kept = new Map<string, IndexEntry>(jobs.entries)
  for (const [id, entry] of shards.entries) {
    if (jobs.entries.has(id) || (jobs.trashed.has(id) && !jobs.ids.has(id))) continue
    // The summary is the last trace of a job that is missing or damaged: it stays.
    kept.set(id, entry)
    if (!jobs.ids.has(id))
      checking.say(jobName(id), 'missing', 'The index knows a job that is not there.', hintForMissing)
  }
  for (const id of jobs.empty) if (!shards.entries.has(id)) checking.sayLeftOver(`jobs/${id}`)
  for (const name of stale) {
    if (mend) await writeShard(disk, at('index'), name, kept.values(), (shards.revs.get(name) ?? 0) + 1)
    const hint = 'It is made anew at the next start.'
    checking.say(`index/${name}`, 'stale index', 'The list does not match the jobs.', hint, mend)
  }
  for (const name of shards.newer)
    checking.say(
      `index/${name}`,
      'newer version',
      'This part of the list was written by a newer version of Plugtray.',
      'It was left as it is.',
    )
  for (const name of await checking.names('index'))
    if (isLeftOver(name) || !/^\d{4}-\d{2}\.json$/.test(name)) checking.foreign(`index/${name}`)
}

const hintForMissing =
  'Restore its folder from a backup, or delete the job in the list to take it out of there.'

/** Shards that do not match the jobs as they are on disk now. */
async function staleAmong(checking: Checking, shards: Shards, jobs: CheckedJobs): Promise<Set<string>> {
  const stale = new Set(shards.unreadable)
  for (const [id, entry] of jobs.entries) {
    const known = shards.entries.get(id)
    if (known && sameStamp(known.file, entry.file) && sameSummary(known, entry)) continue
    const now = await checking.disk.stamp(checking.at('jobs', id, 'job.json'))
    // Saved since it was verified: the index is then right to be ahead.
    if (sameStamp(now, entry.file)) stale.add(shardOf(entry.summary))
  }
  for (const [id, { summary }] of shards.entries)
    if (jobs.trashed.has(id) && !jobs.ids.has(id)) stale.add(shardOf(summary))
  return new Set([...stale].filter(name => !shards.newer.has(name)))
}

const sameSummary = (a: IndexEntry, b: IndexEntry): boolean =>
  JSON.stringify(a.summary) === JSON.stringify(b.summary)

// One job as it is stored: JSON with revision and content hash, verified on every read.
import { currentSchemaVersion } from '../../../shared/job/schema-version.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { parseJob } from '../../../shared/job/parse-job.ts'
import { FaultError } from '../fault.ts'
import { openSealed, sealed } from './content-hash.ts'

/** The job with its revision and the hash of its content. */
export const stampJob = (job: Job, rev: number): Job => sealed({ ...job, rev })

export const jobBytes = (job: Job): Buffer => Buffer.from(JSON.stringify(job))

const damaged = (where: string, what: string) =>
  new FaultError('DAMAGED', {
    what,
    where,
    hint: 'The file was left as it is. Restore it from a backup, or run a check of the catalogue.',
  })

/** Reads a stored job out of its bytes. Throws DAMAGED or NEWER_VERSION, naming `where`. */
export function readStoredJob(bytes: Uint8Array, where: string): Job {
  const opened = openSealed(bytes, 'schemaVersion', currentSchemaVersion)
  if ('newer' in opened)
    throw new FaultError('NEWER_VERSION', {
      what: 'This job was written by a newer version of Plugtray.',
      where,
      hint: 'Update Plugtray to open it. Nothing was changed.',
    })
  if ('fault' in opened) throw damaged(where, opened.fault)
  const parsed = parseJob(opened.document)
  if (!parsed.ok)
    throw damaged(parsed.refusal.where ? `${where}, ${parsed.refusal.where}` : where, parsed.refusal.what)
  return parsed.value
}

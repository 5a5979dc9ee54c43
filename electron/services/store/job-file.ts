// One job on disk: jobs/<id>/job.json, with revision and content hash, verified on every read.
import { createHash } from 'node:crypto'
import { canonicalJson } from '../../../shared/job/canonical.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { parseJob } from '../../../shared/job/parse-job.ts'
import { currentSchemaVersion } from '../../../shared/job/schema-version.ts'
import { FaultError } from '../fault.ts'

/** SHA-256 over the canonical JSON of the document without its `hash`. */
export function contentHash(document: Record<string, unknown>): string {
  const content = Object.fromEntries(Object.entries(document).filter(([key]) => key !== 'hash'))
  return createHash('sha256').update(canonicalJson(content)).digest('hex')
}

/** The job with its next revision and the hash of its content. */
export function stampJob(job: Job, rev: number): Job {
  const stamped = { ...job, rev }
  return { ...stamped, hash: contentHash(stamped) }
}

export const jobBytes = (job: Job): Uint8Array => Buffer.from(JSON.stringify(job))

const damaged = (where: string, what: string) =>
  new FaultError('DAMAGED', {
    what,
    where,
    hint: 'The file was left as it is. Restore it from a backup, or run a check of the catalogue.',
  })

const versionOf = (raw: unknown): unknown =>
  typeof raw === 'object' && raw !== null && 'schemaVersion' in raw ? raw.schemaVersion : undefined

/** Reads a stored job out of its bytes. Throws DAMAGED or NEWER_VERSION, naming `where`. */
export function readStoredJob(bytes: Uint8Array, where: string): Job {
  let raw: unknown
  try {
    raw = JSON.parse(Buffer.from(bytes).toString('utf8'))
  } catch {
    throw damaged(
      where,
      bytes.length === 0 ? 'The job file is empty.' : 'The job file is torn: it is not whole JSON.',
    )
  }
  const version = versionOf(raw)
  if (typeof version === 'number' && version > currentSchemaVersion)
    throw new FaultError('NEWER_VERSION', {
      what: 'This job was written by a newer version of Plugtray.',
      where,
      hint: 'Update Plugtray to open it. Nothing was changed.',
    })
  if (typeof raw !== 'object' || raw === null) throw damaged(where, 'The job file does not hold a job.')
  const document = Object.fromEntries(Object.entries(raw))
  if (typeof document.hash !== 'string' || typeof document.rev !== 'number')
    throw damaged(where, 'The job file lacks its revision or content hash.')
  if (document.hash !== contentHash(document))
    throw damaged(where, 'The content of the job file does not match its hash: it was altered or damaged.')
  const parsed = parseJob(raw)
  if (!parsed.ok)
    throw damaged(parsed.refusal.where ? `${where}, ${parsed.refusal.where}` : where, parsed.refusal.what)
  return parsed.value
}

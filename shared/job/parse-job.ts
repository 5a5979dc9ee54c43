// Reads a job from anywhere: brings it up to date, holds it against the schema and the rules that span fields.
import type { z } from 'zod'
import { checkJob } from './check-job.ts'
import { checkShape } from './document-shape.ts'
import { jobSchema } from './job-schema.ts'
import type { Job } from './job-schema.ts'
import { migrate } from './migrations/migrate.ts'
import { done, refuse } from './refusal.ts'
import type { Outcome } from './refusal.ts'

type Fault = { path: string; message: string }

const joined = (path: readonly PropertyKey[]): string => path.map(String).join('.')

const readable = (message: string): string => {
  const text = message.replace(/^Invalid input: /, '').replace(/^Invalid (string|ISO datetime): /, '')
  return /[.!?]$/.test(text) ? text : `${text}.`
}

/** The choices of a union, for a message that says what would have been right. */
const unionMessage = (issue: z.core.$ZodIssueInvalidUnion): string => {
  const values = issue.errors.flat().flatMap(inner => (inner.code === 'invalid_value' ? inner.values : []))
  return values.length > 0 ? `expected one of ${values.map(String).join(', ')}` : issue.message
}

const faultsOf = (issue: z.core.$ZodIssue): Fault[] => {
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map(key => ({ path: joined([...issue.path, key]), message: 'unknown field.' }))
  const message = issue.code === 'invalid_union' ? unionMessage(issue) : issue.message
  return [{ path: joined(issue.path), message: readable(message) }]
}

const refusalOf = (faults: readonly Fault[]): Outcome<never> => {
  const [first] = faults
  const path = first?.path ?? ''
  const others = faults.length - 1
  return refuse(
    `At ${path === '' ? 'top level' : path}: ${first?.message ?? 'not readable.'}`,
    path === '' ? 'job document' : path,
    others > 0
      ? `Correct this and ${others} more, then try again. List places count from 0.`
      : 'Correct this, then try again. List places count from 0.',
  )
}

/**
 * The job in `raw` (parsed JSON of any origin and version), or a refusal that names the path of the first fault,
 * e.g. "At pulls.3.entry.final.value: expected number, received string." Unknown fields are faults.
 */
export const parseJob = (raw: unknown): Outcome<Job> => {
  const shaped = checkShape(raw)
  if (!shaped.ok) return shaped
  const migrated = migrate(raw)
  if (!migrated.ok) return migrated
  const parsed = jobSchema.safeParse(migrated.value)
  if (!parsed.success) return refusalOf(parsed.error.issues.flatMap(faultsOf))
  const problems = checkJob(parsed.data)
  return problems.length > 0 ? refusalOf(problems) : done(parsed.data)
}

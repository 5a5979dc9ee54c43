// A job handed to the command line: a JOB.json file, or the id of a job in the catalogue.
import { lstat, readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import type { Job } from '../../shared/job/job-schema.ts'
import { parseJob } from '../../shared/job/parse-job.ts'
import { FaultError } from '../services/fault.ts'

const largestJob = 16 * 1024 * 1024

const badFile = (name: string, what: string, hint: string) =>
  new FaultError('REFUSED', { what, where: name, hint })

/** Reads and checks a JOB.json; people and scripts may leave `rev` and `hash` out. */
export async function readJobFile(path: string): Promise<Job> {
  const name = basename(path)
  const found = await lstat(path).catch(() => null)
  if (!found?.isFile()) throw badFile(name, 'There is no such job file.', 'Give the path of a JOB.json file.')
  if (found.size > largestJob)
    throw badFile(
      name,
      'The job file is larger than 16 MiB.',
      'A job document holds no photos; is this the right file?',
    )
  let raw: unknown
  try {
    raw = JSON.parse(await readFile(path, 'utf8'))
  } catch (error) {
    throw badFile(
      name,
      `The file is not JSON: ${error instanceof Error ? error.message : 'unreadable'}.`,
      'Nothing was read from it.',
    )
  }
  const parsed = parseJob(raw)
  if (!parsed.ok) {
    const { what, where, hint } = parsed.refusal
    throw badFile(where ? `${name}, ${where}` : name, what, hint)
  }
  return parsed.value
}

// Verifies the recordings of a catalogue: each against its name, and all against the pulls that were made from them.
import type { Job } from '../../../shared/job/job-schema.ts'
import type { CheckedJobs } from './check-jobs.ts'
import type { Checking } from './checking.ts'
import { recordingName } from './recordings.ts'
import { sha256Of } from './verified-write.ts'

/** SHA-256 of every recording that a job's pulls name, corrected entries too. */
export function recordingsOf(job: Job): string[] {
  return job.pulls.flatMap(pull => {
    if (pull.test !== 'relative compression' && pull.test !== 'crank speed') return []
    const entries = [pull.entry, ...(pull.corrections ?? []).map(correction => correction.entry)]
    return entries.map(entry => entry.source.recording)
  })
}

const recordingFile = /^([0-9a-f]{64})\.csv$/

/** Gives the number of recordings that are there. */
export async function checkRecordings(checking: Checking, jobs: CheckedJobs): Promise<number> {
  const found = new Set<string>()
  for (const part of await checking.names('recordings')) {
    const place = `recordings/${part}`
    if (!/^[0-9a-f]{2}$/.test(part) || !(await checking.disk.isFolder(checking.at(place)))) {
      checking.foreign(place)
      continue
    }
    for (const file of await checking.names(place)) {
      checking.pause()
      const sha256 = recordingFile.exec(file)?.[1]
      if (!sha256?.startsWith(part)) checking.foreign(`${place}/${file}`)
      else {
        found.add(sha256)
        await checkRecording(checking, sha256, jobs)
      }
    }
  }
  for (const [sha256, job] of jobs.recordings)
    if (!found.has(sha256))
      checking.say(
        recordingName(sha256),
        'missing',
        `A recording is not there that ${job} names.`,
        'Restore the file from a backup. Its values are in the job; only its picture cannot be drawn.',
      )
  return found.size
}

async function checkRecording(checking: Checking, sha256: string, jobs: CheckedJobs): Promise<void> {
  const name = recordingName(sha256)
  const bytes = await checking.read(name)
  if (!bytes) return
  if (sha256Of(bytes) !== sha256)
    checking.say(
      name,
      'damaged',
      'The recording does not match its hash.',
      'Add the same file again, or restore it from a backup.',
    )
  if (!jobs.recordings.has(sha256) && !jobs.recordingsBefore.has(sha256))
    checking.say(name, 'not named by any job', 'No pull was made from this recording.', 'It can be deleted.')
}

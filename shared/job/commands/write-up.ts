// What the technician chose for the write-up: shots to print and notes for its readers.
import { sameContent } from '../canonical.ts'
import type { CommandOf } from '../command-schema.ts'
import { shotsOf } from '../current.ts'
import type { Job } from '../job-schema.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'

export const setWriteUp = (job: Job, { writeUp }: CommandOf<'set write-up'>): Outcome<Job> => {
  const known = new Set(shotsOf(job).map(shot => shot.id))
  const unknown = writeUp.shots.find(id => !known.has(id))
  if (unknown !== undefined)
    return refuse(
      'This job has no such shot.',
      `shot ${unknown}`,
      'Choose shots of this job for the write-up.',
    )
  const twice = writeUp.shots.find((id, i) => writeUp.shots.indexOf(id) !== i)
  if (twice !== undefined)
    return refuse('The write-up names a shot twice.', `shot ${twice}`, 'Name each shot once.')
  return done(sameContent(writeUp, job.writeUp) ? job : { ...job, writeUp })
}

/** Takes shots that the job no longer has out of the write-up's choice. */
export const keepKnownShots = (job: Job): Job => {
  const known = new Set(shotsOf(job).map(shot => shot.id))
  const shots = job.writeUp.shots.filter(id => known.has(id))
  return shots.length === job.writeUp.shots.length ? job : { ...job, writeUp: { ...job.writeUp, shots } }
}

// What is known of the visit as a whole: complaint, engine, circumstances, who works on it, notes, archived or not.
import { sameContent } from '../canonical.ts'
import type { CommandOf } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import { done } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import { without } from '../without.ts'
import type { CommandContext } from './context.ts'

export const setComplaint = (job: Job, { complaint }: CommandOf<'set complaint'>): Outcome<Job> =>
  done(complaint === job.complaint ? job : { ...job, complaint })

export const setEngine = (job: Job, { engine }: CommandOf<'set engine'>): Outcome<Job> =>
  done(sameContent(engine, job.engine) ? job : { ...job, engine })

export const setCircumstances = (job: Job, { circumstances }: CommandOf<'set circumstances'>): Outcome<Job> =>
  done(sameContent(circumstances, job.circumstances) ? job : { ...job, circumstances })

export const setTechnician = (job: Job, { technician }: CommandOf<'set technician'>): Outcome<Job> => {
  if (technician === null) return done(without(job, 'technician'))
  return done(technician === job.technician ? job : { ...job, technician })
}

/** Empty notes are no notes. */
export const setNotes = (job: Job, { notes }: CommandOf<'set notes'>): Outcome<Job> => {
  if (notes === '') return done(without(job, 'notes'))
  return done(notes === job.notes ? job : { ...job, notes })
}

export const setArchived = (
  job: Job,
  { archived }: CommandOf<'set archived'>,
  { now }: CommandContext,
): Outcome<Job> => {
  if (!archived) return done(without(job, 'archivedAt'))
  return done(job.archivedAt === undefined ? { ...job, archivedAt: now } : job)
}

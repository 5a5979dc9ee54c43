// What was done to put the engine right, stamped with when it was written down and by whom.
import { sameContent } from '../canonical.ts'
import type { CommandOf } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import { done } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import { without } from '../without.ts'
import { byPerson } from './context.ts'
import type { CommandContext } from './context.ts'

export const setRepair = (
  job: Job,
  { repair }: CommandOf<'set repair'>,
  context: CommandContext,
): Outcome<Job> => {
  if (repair === null) return done(without(job, 'repair'))
  const said = job.repair && { done: job.repair.done, cause: job.repair.cause }
  if (sameContent(said, repair)) return done(job)
  return done({ ...job, repair: { ...repair, at: context.now, ...byPerson(context) } })
}

// Putting many pulls of a misread gauge right in one go: all of them or none.
import { correctPull } from '../../gauges/correct-entry.ts'
import type { CommandOf } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import { limits } from '../limits.ts'
import type { Pull } from '../pull-schema.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import { byPerson } from './context.ts'
import type { CommandContext } from './context.ts'

export const correctPulls = (
  job: Job,
  { pullIds, how, reason }: CommandOf<'correct pulls'>,
  context: CommandContext,
): Outcome<Job> => {
  const corrected = new Map<string, Pull>()
  for (const id of new Set(pullIds)) {
    const pull = job.pulls.find(one => one.id === id)
    if (pull === undefined)
      return refuse('This job has no such pull.', `pull ${id}`, 'Choose among the pulls of this job.')
    if ((pull.corrections?.length ?? 0) >= limits.correctionsPerPull)
      return refuse(
        `A pull can be corrected at most ${limits.correctionsPerPull} times.`,
        `pull ${id}`,
        'Void it and enter the reading anew.',
      )
    const outcome = correctPull(pull, { how, reason, at: context.now, ...byPerson(context) })
    if (!outcome.ok) return outcome
    corrected.set(id, outcome.value)
  }
  return done({ ...job, pulls: job.pulls.map(pull => corrected.get(pull.id) ?? pull) })
}

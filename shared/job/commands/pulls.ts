// Adding a pull, voiding it with a reason, and taking the voiding back. A pull is never deleted or overwritten.
import { cylindersOf } from '../../engine/relations.ts'
import type { CommandOf } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import { limits } from '../limits.ts'
import type { Pull } from '../pull-schema.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import { without } from '../without.ts'
import { byPerson } from './context.ts'
import type { CommandContext } from './context.ts'

const pullInWords = (pull: Pull): string =>
  'cylinder' in pull ? `${pull.test} pull of cylinder ${pull.cylinder}` : `${pull.test} pull`

const requirePull = (job: Job, pullId: string): Outcome<Pull> => {
  const pull = job.pulls.find(({ id }) => id === pullId)
  if (pull !== undefined) return done(pull)
  return refuse('This job has no such pull.', `pull ${pullId}`, 'Choose one of the pulls of this job.')
}

/** Refuses a pull of a cylinder that the layout has not. */
const requireCylinder = (job: Job, pull: Pull): Outcome<Pull> => {
  if (!('cylinder' in pull) || cylindersOf(job.layout).includes(pull.cylinder)) return done(pull)
  return refuse(
    `The engine of this job has no cylinder ${pull.cylinder}.`,
    pullInWords(pull),
    'Enter the pull for a cylinder of the layout, or change the layout first.',
  )
}

const withPull = (job: Job, pull: Pull): Job => ({
  ...job,
  pulls: job.pulls.map(other => (other.id === pull.id ? pull : other)),
})

/** A pull that does not say who made it is taken to be by the person at work. */
export const addPull = (job: Job, { pull }: CommandOf<'add pull'>, context: CommandContext): Outcome<Job> => {
  if (job.pulls.some(({ id }) => id === pull.id))
    return refuse(
      'There is a pull with this id already.',
      `pull ${pull.id}`,
      'Give the new pull an id of its own; a wrong pull is voided, not replaced.',
    )
  if (job.pulls.length >= limits.pullsPerJob)
    return refuse(
      `A job holds at most ${limits.pullsPerJob} pulls, voided ones included.`,
      pullInWords(pull),
      'Start a new job for further measurements.',
    )
  const fits = requireCylinder(job, pull)
  if (!fits.ok) return fits
  if (pull.instrument !== undefined && !job.instruments?.some(({ id }) => id === pull.instrument))
    return refuse(
      'This job has no such tester.',
      `tester ${pull.instrument}`,
      'Add the tester to the job first, or enter the pull without one.',
    )
  return done({ ...job, pulls: [...job.pulls, { ...byPerson(context), ...pull }] })
}

/** Pulls from a table: the first that cannot be taken refuses them all. */
export const addPulls = (
  job: Job,
  { pulls }: CommandOf<'add pulls'>,
  context: CommandContext,
): Outcome<Job> => {
  let next = job
  for (const pull of pulls) {
    const added = addPull(next, { command: 'add pull', pull }, context)
    if (!added.ok) return added
    next = added.value
  }
  return done(next)
}

export const voidPull = (
  job: Job,
  { pullId, reason }: CommandOf<'void pull'>,
  context: CommandContext,
): Outcome<Job> => {
  const pull = requirePull(job, pullId)
  if (!pull.ok) return pull
  if (pull.value.voided !== undefined)
    return refuse(
      `This pull is voided already: ${pull.value.voided.reason}`,
      pullInWords(pull.value),
      'Take the voiding back first to give another reason.',
    )
  return done(withPull(job, { ...pull.value, voided: { reason, at: context.now, ...byPerson(context) } }))
}

export const unvoidPull = (job: Job, { pullId }: CommandOf<'unvoid pull'>): Outcome<Job> => {
  const pull = requirePull(job, pullId)
  if (!pull.ok) return pull
  if (pull.value.voided === undefined)
    return refuse('This pull is not voided.', pullInWords(pull.value), 'There is nothing to take back.')
  const fits = requireCylinder(job, pull.value)
  if (!fits.ok) return fits
  return done(withPull(job, without(pull.value, 'voided')))
}

// How a test was set up, and the testers a job's pulls name.
import type { CommandOf } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import { without } from '../without.ts'

/** Takes the place of what was said of this test and stage before; empty conditions take it away. */
export const setUpTest = (job: Job, { test, stage, conditions }: CommandOf<'set up test'>): Outcome<Job> => {
  const others = (job.setUps ?? []).filter(one => one.test !== test || one.stage !== stage)
  const setUps = Object.keys(conditions).length === 0 ? others : [...others, { test, stage, conditions }]
  return done(setUps.length === 0 ? without(job, 'setUps') : { ...job, setUps })
}

/** Refused while a pull names an instrument that the new list lacks. */
export const setInstruments = (job: Job, { instruments }: CommandOf<'set instruments'>): Outcome<Job> => {
  const ids = new Set(instruments.map(({ id }) => id))
  if (ids.size < instruments.length)
    return refuse('Two testers share one id.', 'instruments', 'Give each tester an id of its own.')
  const lost = job.pulls.find(({ instrument }) => instrument !== undefined && !ids.has(instrument))
  if (lost !== undefined)
    return refuse(
      'A pull was made with a tester that this would take away.',
      `${lost.test} pull ${lost.id}`,
      'Keep the tester, or change its name instead.',
    )
  return done(instruments.length === 0 ? without(job, 'instruments') : { ...job, instruments })
}

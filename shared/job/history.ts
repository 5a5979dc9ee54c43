// Undo and redo, to any depth, as data. Undo never deletes evidence: a pull that it takes back stays, voided.
import { sameContent } from './canonical.ts'
import type { CommandContext } from './commands/context.ts'
import { byPerson } from './commands/context.ts'
import type { Job } from './job-schema.ts'
import type { Pull } from './pull-schema.ts'
import { done, refuse } from './refusal.ts'
import type { Outcome } from './refusal.ts'

export const takenBackByUndo = 'taken back by undo'

const optionalFields = ['technician', 'notes', 'repair', 'archivedAt', 'instruments', 'setUps'] as const
const requiredFields = ['complaint', 'engine', 'layout', 'circumstances', 'trays', 'writeUp'] as const
const fields = [...requiredFields, ...optionalFields] as const
type Field = (typeof fields)[number]
type Parts = Partial<Pick<Job, Field>>

type PullChange = { before: Pull | null; after: Pull }

/** What one change did: the fields that differ, with both values, and the pulls it added or altered. */
export type Step = { label: string; changed: Field[]; before: Parts; after: Parts; pulls: PullChange[] }

/** Oldest first; the next to undo and the next to redo are last. */
export type History = { past: readonly Step[]; future: readonly Step[] }

export const emptyHistory = (): History => ({ past: [], future: [] })

const copyField = <F extends Field>(from: Pick<Parts, F>, to: Pick<Parts, F>, field: F): void => {
  const value = from[field]
  if (value !== undefined) to[field] = value
}

const partsOf = (job: Job, changed: readonly Field[]): Parts => {
  const parts: Parts = {}
  for (const field of changed) copyField(job, parts, field)
  return parts
}

const pullChanges = (before: Job, after: Job): PullChange[] => {
  if (before.pulls === after.pulls) return []
  const known = new Map(before.pulls.map(pull => [pull.id, pull]))
  return after.pulls.flatMap(pull => {
    const was = known.get(pull.id) ?? null
    return was !== null && sameContent(was, pull) ? [] : [{ before: was, after: pull }]
  })
}

/**
 * The history after a change from `before` to `after`. What could be redone is then gone. A change that touches
 * nothing but revision, hash and time leaves the history as it is.
 */
export const record = (history: History, before: Job, after: Job, label: string): History => {
  const changed = fields.filter(field => !sameContent(before[field], after[field]))
  const pulls = pullChanges(before, after)
  if (changed.length === 0 && pulls.length === 0) return history
  const step = { label, changed, before: partsOf(before, changed), after: partsOf(after, changed), pulls }
  return { past: [...history.past, step], future: [] }
}

const withParts = (job: Job, changed: readonly Field[], parts: Parts): Job => {
  const next = { ...job, ...parts }
  for (const field of optionalFields)
    if (changed.includes(field) && parts[field] === undefined) delete next[field]
  return next
}

const withPulls = (job: Job, pulls: ReadonlyMap<string, Pull>): Job =>
  pulls.size === 0 ? job : { ...job, pulls: job.pulls.map(pull => pulls.get(pull.id) ?? pull) }

const elsewhere = (step: Step) =>
  refuse(
    'The job was changed in another way since.',
    step.label,
    'Set it by hand: going back now would throw the other change away.',
  )

/** Whether the job still is as the step left it (or, for redo, as it was before the step). */
const stands = (job: Job, step: Step, parts: Parts): boolean =>
  step.changed.every(field => sameContent(job[field], parts[field]))

/** The pull as undo leaves it: as it was before the step, or, had the step added it, voided. */
const takenBack = (change: PullChange, context: CommandContext): Pull =>
  change.before ??
  (change.after.voided === undefined
    ? {
        ...change.after,
        voided: { reason: takenBackByUndo, at: context.now, ...byPerson(context) },
      }
    : change.after)

export type Moved = { job: Job; history: History }

/** Takes the last change back. Revision and hash stay those of the job given: the store sets them. */
export const undo = (history: History, job: Job, context: CommandContext): Outcome<Moved> => {
  const step = history.past.at(-1)
  if (step === undefined)
    return refuse('There is nothing to undo.', `job ${job.id}`, 'Changes of this session can be undone.')
  const byId = new Map(job.pulls.map(pull => [pull.id, pull]))
  const pullsStand = step.pulls.every(({ after }) => sameContent(byId.get(after.id), after))
  if (!pullsStand || !stands(job, step, step.after)) return elsewhere(step)
  const pulls = new Map(step.pulls.map(change => [change.after.id, takenBack(change, context)]))
  const back = withPulls(withParts(job, step.changed, step.before), pulls)
  return done({
    job: { ...back, updatedAt: context.now },
    history: { past: history.past.slice(0, -1), future: [...history.future, step] },
  })
}

/** Makes the change again that was taken back last; a pull that undo voided counts again. */
export const redo = (history: History, job: Job, context: CommandContext): Outcome<Moved> => {
  const step = history.future.at(-1)
  if (step === undefined)
    return refuse('There is nothing to redo.', `job ${job.id}`, 'Redo follows an undo of this session.')
  const ids = new Set(job.pulls.map(pull => pull.id))
  const pullsStand = step.pulls.every(({ after }) => ids.has(after.id))
  if (!pullsStand || !stands(job, step, step.before)) return elsewhere(step)
  const pulls = new Map(step.pulls.map(({ after }) => [after.id, after]))
  const again = withPulls(withParts(job, step.changed, step.after), pulls)
  return done({
    job: { ...again, updatedAt: context.now },
    history: { past: [...history.past, step], future: history.future.slice(0, -1) },
  })
}

/** Label of the change that undo would take back, or null. */
export const undoLabel = (history: History): string | null => history.past.at(-1)?.label ?? null

/** Label of the change that redo would make again, or null. */
export const redoLabel = (history: History): string | null => history.future.at(-1)?.label ?? null

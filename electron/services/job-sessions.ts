// Open jobs of this session: commands are applied one after another, each durable before it is answered, with undo and redo.
import { randomUUID } from 'node:crypto'
import type { JobState, NewJob } from '../../shared/contract/contract.ts'
import { applyCommand } from '../../shared/job/apply-command.ts'
import { commandLabel } from '../../shared/job/command-label.ts'
import type { Command } from '../../shared/job/command-schema.ts'
import {
  emptyHistory,
  type History,
  record,
  redo,
  redoLabel,
  undo,
  undoLabel,
} from '../../shared/job/history.ts'
import type { Job } from '../../shared/job/job-schema.ts'
import { newJob } from '../../shared/job/new-job.ts'
import { accept } from './fault.ts'
import type { Catalogue } from './store/catalogue.ts'
import { turns } from './store/turns.ts'

type Session = { job: Job; history: History }

export type JobSessions = {
  create: (wanted: NewJob, demo?: boolean) => Promise<JobState>
  get: (id: string) => Promise<JobState>
  apply: (id: string, command: Command) => Promise<JobState>
  undo: (id: string) => Promise<JobState>
  redo: (id: string) => Promise<JobState>
  duplicate: (id: string) => Promise<JobState>
  remove: (id: string) => Promise<void>
  restore: (id: string) => Promise<JobState>
}

/** Sessions kept in memory; the least recently used gives way, and with it only its undo. */
const mostSessions = 200

export function createJobSessions(catalogue: Catalogue, now: () => Date = () => new Date()): JobSessions {
  const sessions = new Map<string, Session>()
  /** Jobs whose last save failed: what the disk holds decides, and it is looked at before the next step. */
  const doubtful = new Set<string>()
  const inTurn = turns()
  const context = () => {
    const person = catalogue.settings.get().technician.trim()
    return { now: now().toISOString(), ...(person === '' ? {} : { person }) }
  }
  const keep = (id: string, session: Session): Session => {
    sessions.delete(id)
    sessions.set(id, session)
    const oldest = sessions.keys().next().value
    if (sessions.size > mostSessions && oldest !== undefined) sessions.delete(oldest)
    return session
  }
  const open = async (id: string): Promise<Session> => {
    const known = sessions.get(id)
    // A window that only reads must see what the writer wrote since.
    if (known && catalogue.readOnly === null && !doubtful.has(id)) return keep(id, known)
    const job = await catalogue.load(id)
    doubtful.delete(id)
    const history = known && known.job.hash === job.hash ? known.history : emptyHistory()
    return keep(id, { job, history })
  }
  const stateOf = ({ job, history }: Session): JobState => ({
    job,
    undo: undoLabel(history),
    redo: redoLabel(history),
  })
  const change = (id: string, work: (session: Session) => Session): Promise<JobState> =>
    inTurn(id, async () => {
      const before = await open(id)
      const after = work(before)
      if (after.job === before.job) return stateOf(keep(id, after))
      try {
        return stateOf(keep(id, { ...after, job: await catalogue.save(after.job) }))
      } catch (error) {
        doubtful.add(id)
        throw error
      }
    })
  const add = async (job: Job): Promise<JobState> =>
    stateOf(keep(job.id, { job: await catalogue.save(job), history: emptyHistory() }))

  const create: JobSessions['create'] = (wanted, demo = false) => {
    const { now: at, person } = context()
    return add(
      newJob({
        ...wanted,
        id: randomUUID(),
        trayId: randomUUID(),
        now: at,
        rules: catalogue.settings.get().rules,
        ...(person === undefined ? {} : { technician: person }),
        ...(demo ? { demo } : {}),
      }),
    )
  }

  return {
    create,
    get: id => inTurn(id, async () => stateOf(await open(id))),
    apply: (id, command) =>
      change(id, ({ job, history }) => {
        const next = accept(applyCommand(job, command, context()))
        return next === job
          ? { job, history }
          : { job: next, history: record(history, job, next, commandLabel(command)) }
      }),
    undo: id => change(id, ({ job, history }) => accept(undo(history, job, context()))),
    redo: id => change(id, ({ job, history }) => accept(redo(history, job, context()))),
    async duplicate(id) {
      const { job } = await inTurn(id, () => open(id))
      return create({ complaint: '', engine: job.engine, layout: job.layout }, job.demo === true)
    },
    remove: id =>
      inTurn(id, async () => {
        await catalogue.remove(id)
        sessions.delete(id)
      }),
    restore: id =>
      inTurn(id, async () =>
        stateOf(keep(id, { job: await catalogue.restore(id), history: emptyHistory() })),
      ),
  }
}

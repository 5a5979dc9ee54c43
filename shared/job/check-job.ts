// The rules of a job that span fields, beyond what its schema says: slots fit the engine, ids are unique, nothing dangles.
import { checkLayout } from '../engine/check-layout.ts'
import { cylindersOf } from '../engine/relations.ts'
import { slotKey, slotLabel, slotsOf } from '../engine/slots.ts'
import { shotsOf } from './current.ts'
import type { Job } from './job-schema.ts'

/** `path` counts list places from 0, as in the file: trays.0.slots.2. */
export type JobProblem = { path: string; message: string }

type Named = { path: string; id: string }

const repeats = (what: string, named: readonly Named[]): JobProblem[] => {
  const first = new Map<string, string>()
  return named.flatMap(({ path, id }) => {
    const other = first.get(id)
    if (other !== undefined) return [{ path, message: `${what} ${id} is used already, at ${other}.` }]
    first.set(id, path)
    return []
  })
}

const layoutProblems = (job: Job): JobProblem[] =>
  checkLayout(job.layout).map(({ field, message }) => ({ path: `layout.${field}`, message }))

const slotProblems = (job: Job): JobProblem[] => {
  const wanted = new Map(slotsOf(job.layout).map(address => [slotKey(address), address]))
  return job.trays.flatMap((tray, t) => {
    const path = `trays.${t}.slots`
    const strangers = tray.slots.flatMap((slot, s) =>
      wanted.has(slotKey(slot))
        ? []
        : [{ path: `${path}.${s}`, message: `the layout has no ${slotLabel(slot)}.` }],
    )
    const present = new Set(tray.slots.map(slotKey))
    const missing = [...wanted]
      .filter(([key]) => !present.has(key))
      .map(([, address]) => ({ path, message: `the slot of ${slotLabel(address)} is missing.` }))
    const twice = repeats(
      'slot',
      tray.slots.map((slot, s) => ({ path: `${path}.${s}`, id: slotKey(slot) })),
    )
    return [...strangers, ...missing, ...twice]
  })
}

const shotIds = (job: Job): Named[] =>
  job.trays.flatMap((tray, t) => [
    ...tray.slots.flatMap((slot, s) =>
      slot.shots.map(({ id }, i) => ({ path: `trays.${t}.slots.${s}.shots.${i}.id`, id })),
    ),
    ...tray.unsorted.map(({ id }, i) => ({ path: `trays.${t}.unsorted.${i}.id`, id })),
  ])

/** A voided pull may name a cylinder that a later layout no longer has. */
const pullProblems = (job: Job): JobProblem[] => {
  const cylinders = cylindersOf(job.layout)
  return job.pulls.flatMap((pull, p) =>
    'cylinder' in pull && pull.voided === undefined && !cylinders.includes(pull.cylinder)
      ? [{ path: `pulls.${p}.cylinder`, message: `the layout has no cylinder ${pull.cylinder}.` }]
      : [],
  )
}

/** Every tester that a pull names is kept in the job, and none twice. */
const instrumentProblems = (job: Job): JobProblem[] => {
  const known = new Set(job.instruments?.map(({ id }) => id))
  const unknown = job.pulls.flatMap(({ instrument }, p) =>
    instrument === undefined || known.has(instrument)
      ? []
      : [{ path: `pulls.${p}.instrument`, message: `the job has no tester ${instrument}.` }],
  )
  const named = (job.instruments ?? []).map(({ id }, i) => ({ path: `instruments.${i}.id`, id }))
  return [...unknown, ...repeats('tester id', named)]
}

const writeUpProblems = (job: Job): JobProblem[] => {
  const known = new Set(shotsOf(job).map(shot => shot.id))
  const named = job.writeUp.shots.map((id, i) => ({ path: `writeUp.shots.${i}`, id }))
  const unknown = named.filter(({ id }) => !known.has(id))
  return [
    ...unknown.map(({ path, id }) => ({ path, message: `no tray has a shot ${id}.` })),
    ...repeats('shot', named),
  ]
}

/** Every problem found, in the order of the document; empty when the job holds together. */
export const checkJob = (job: Job): JobProblem[] => [
  ...layoutProblems(job),
  ...repeats(
    'tray id',
    job.trays.map(({ id }, t) => ({ path: `trays.${t}.id`, id })),
  ),
  ...slotProblems(job),
  ...repeats('shot id', shotIds(job)),
  ...repeats(
    'pull id',
    job.pulls.map(({ id }, p) => ({ path: `pulls.${p}.id`, id })),
  ),
  ...pullProblems(job),
  ...instrumentProblems(job),
  ...writeUpProblems(job),
]

// Looking things up in a job: what holds now, without what was voided.
import { sameSlot } from '../engine/slots.ts'
import type { TestConditions } from '../gauges/conditions-schema.ts'
import type { SlotAddress } from './command-schema.ts'
import type { Job } from './job-schema.ts'
import type { Pull, PullOf, TestKind } from './pull-schema.ts'
import type { Reading, Shot, Slot, Stage, Tray } from './tray-schema.ts'

/** What is held of the plug now: the person's reading, which outranks any suggestion. */
export const currentReading = (slot: Slot): Reading | undefined => slot.reading

const isOf =
  <T extends TestKind>(test: T) =>
  (pull: Pull): pull is PullOf<T> =>
    pull.test === test

/** The pull with the entry that counts: its last correction, or as it was made. */
export const asCorrected = <P extends Pull>(pull: P): P => {
  const last = pull.corrections?.at(-1)
  return last === undefined ? pull : { ...pull, entry: last.entry }
}

type Sorted = ReadonlyMap<string, readonly Pull[]>

const key = (test: TestKind, stage: Stage): string => `${stage} ${test}`

/** Sorted once for each list of pulls: every rule asks for its own test, and a job never changes, it is replaced. */
const sortedPulls = new WeakMap<readonly Pull[], Sorted>()

function sorted(pulls: readonly Pull[]): Sorted {
  const known = sortedPulls.get(pulls)
  if (known) return known
  const map = new Map<string, Pull[]>()
  for (const pull of pulls) {
    if (pull.voided !== undefined) continue
    const name = key(pull.test, pull.stage)
    const others = map.get(name)
    if (others) others.push(asCorrected(pull))
    else map.set(name, [asCorrected(pull)])
  }
  sortedPulls.set(pulls, map)
  return map
}

/** The pulls of one test that still count, in the order they were entered, each with the entry that counts. */
export const validPulls = <T extends TestKind>(job: Job, test: T, stage: Stage): PullOf<T>[] =>
  (sorted(job.pulls).get(key(test, stage)) ?? []).filter(isOf(test))

/** How a test was set up at a stage, as far as somebody said. */
export const conditionsOf = (job: Job, test: TestKind, stage: Stage): TestConditions =>
  job.setUps?.find(one => one.test === test && one.stage === stage)?.conditions ?? {}

export const findTray = (job: Job, id: string): Tray | undefined => job.trays.find(tray => tray.id === id)

export const findSlot = (tray: Tray, address: SlotAddress): Slot | undefined =>
  tray.slots.find(slot => sameSlot(slot, address))

/** Every shot of one tray: slot by slot, then the unsorted ones. */
export const shotsOfTray = (tray: Tray): Shot[] => [
  ...tray.slots.flatMap(slot => slot.shots),
  ...tray.unsorted,
]

/** Every shot of the job, tray by tray. */
export const shotsOf = (job: Job): Shot[] => job.trays.flatMap(shotsOfTray)

/** SHA-256 of every photo the job shows, each once. */
export const photosOf = (job: Job): string[] => [...new Set(shotsOf(job).map(shot => shot.photo))]

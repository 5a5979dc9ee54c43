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

/** The pulls of one test that still count, in the order they were entered, each with the entry that counts. */
export const validPulls = <T extends TestKind>(job: Job, test: T, stage: Stage): PullOf<T>[] =>
  job.pulls
    .filter(pull => pull.stage === stage && pull.voided === undefined)
    .filter(isOf(test))
    .map(asCorrected)

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

// Adding, renaming and removing a tray.
import type { CommandOf } from '../command-schema.ts'
import { findTray } from '../current.ts'
import { emptySlots } from '../empty-slots.ts'
import type { Job } from '../job-schema.ts'
import { limits } from '../limits.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import type { CommandContext } from './context.ts'
import { requireTray, trayInWords, withTray } from './tray-access.ts'
import { keepKnownShots } from './write-up.ts'

export const addTray = (
  job: Job,
  { trayId, name, stage }: CommandOf<'add tray'>,
  { now }: CommandContext,
): Outcome<Job> => {
  if (findTray(job, trayId) !== undefined)
    return refuse(
      'There is a tray with this id already.',
      `tray ${trayId}`,
      'Give the new tray an id of its own.',
    )
  if (job.trays.length >= limits.traysPerJob)
    return refuse(
      `A job holds at most ${limits.traysPerJob} trays.`,
      `tray "${name}"`,
      'Remove a tray that is not needed, or start a new job for the next visit.',
    )
  const tray = { id: trayId, name, stage, createdAt: now, slots: emptySlots(job.layout), unsorted: [] }
  return done({ ...job, trays: [...job.trays, tray] })
}

export const renameTray = (job: Job, { trayId, name, stage }: CommandOf<'rename tray'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  if (tray.value.name === name && tray.value.stage === stage) return done(job)
  return done(withTray(job, { ...tray.value, name, stage }))
}

/** Its shots and readings go with it; the photos stay in the store, and undo brings the tray back. */
export const removeTray = (job: Job, { trayId }: CommandOf<'remove tray'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  if (job.trays.length === 1)
    return refuse(
      'A job keeps at least one tray.',
      trayInWords(tray.value),
      'Add another tray first, or clear this one instead.',
    )
  return done(keepKnownShots({ ...job, trays: job.trays.filter(other => other !== tray.value) }))
}

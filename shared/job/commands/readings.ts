// What a person says of one plug, or of several at once.
import { sameContent } from '../canonical.ts'
import type { CommandOf, ReadingChange } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import { done } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import type { Reading, ReadingDetails } from '../tray-schema.ts'
import { without } from '../without.ts'
import type { CommandContext } from './context.ts'
import { changeSlots, requireTray, withTray } from './tray-access.ts'

type Said = Pick<Reading, 'condition' | 'details' | 'note'>
type DetailsChange = NonNullable<ReadingChange['details']>

/** Undefined keeps what was there, null takes it away. */
const changed = <T>(before: T | undefined, change: T | null | undefined): T | undefined =>
  change === undefined ? before : (change ?? undefined)

const changedDetails = (before: ReadingDetails, change: DetailsChange): ReadingDetails => {
  const insulatorColour = changed(before.insulatorColour, change.insulatorColour)
  const deposits = changed(before.deposits, change.deposits)
  const wetness = changed(before.wetness, change.wetness)
  const electrodeWear = changed(before.electrodeWear, change.electrodeWear)
  const insulatorDamage = changed(before.insulatorDamage, change.insulatorDamage)
  const gap = changed(before.gap, change.gap)
  const oilInWell = changed(before.oilInWell, change.oilInWell)
  return {
    ...(insulatorColour !== undefined && { insulatorColour }),
    ...(deposits !== undefined && deposits.length > 0 && { deposits }),
    ...(wetness !== undefined && { wetness }),
    ...(electrodeWear !== undefined && { electrodeWear }),
    ...(insulatorDamage !== undefined && { insulatorDamage }),
    ...(gap !== undefined && { gap }),
    ...(oilInWell !== undefined && { oilInWell }),
  }
}

const saidOf = (reading: Reading | undefined): Said => ({
  ...(reading?.condition !== undefined && { condition: reading.condition }),
  details: reading?.details ?? {},
  ...(reading?.note !== undefined && { note: reading.note }),
})

const changedSaid = (before: Said, change: ReadingChange): Said => {
  const condition = changed(before.condition, change.condition)
  const note = changed(before.note, change.note)
  return {
    ...(condition !== undefined && { condition }),
    details: changedDetails(before.details, change.details ?? {}),
    ...(note !== undefined && note !== '' && { note }),
  }
}

const saysNothing = (said: Said): boolean =>
  said.condition === undefined && said.note === undefined && Object.keys(said.details).length === 0

/**
 * Fields left out stay, null takes a field away; an empty note or an empty list of deposits is none. A reading
 * that says nothing any more disappears. One that says the same as before keeps its time and person.
 */
export const setReading = (
  job: Job,
  { trayId, slots, change }: CommandOf<'set reading'>,
  { now, person }: CommandContext,
): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  const named = person === undefined || person === '' ? {} : { name: person }
  const read = changeSlots(tray.value, slots, slot => {
    const before = saidOf(slot.reading)
    const said = changedSaid(before, change)
    if (saysNothing(said)) return without(slot, 'reading')
    if (sameContent(before, said)) return slot
    return { ...slot, reading: { by: { kind: 'person', ...named }, at: now, ...said } }
  })
  return read.ok ? done(withTray(job, read.value)) : read
}

export const clearReading = (job: Job, { trayId, slots }: CommandOf<'clear reading'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  const cleared = changeSlots(tray.value, slots, slot => without(slot, 'reading'))
  return cleared.ok ? done(withTray(job, cleared.value)) : cleared
}

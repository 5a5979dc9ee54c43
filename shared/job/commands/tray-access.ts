// Finding the tray and slot that a command names, and putting a changed tray or slot back.
import { sameSlot, slotLabel } from '../../engine/slots.ts'
import type { SlotAddress } from '../command-schema.ts'
import { findSlot, findTray } from '../current.ts'
import type { Job } from '../job-schema.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import type { Slot, Tray } from '../tray-schema.ts'

export const trayInWords = (tray: Tray): string => `tray "${tray.name}"`

export const requireTray = (job: Job, trayId: string): Outcome<Tray> => {
  const tray = findTray(job, trayId)
  if (tray !== undefined) return done(tray)
  return refuse('This job has no such tray.', `tray ${trayId}`, 'Choose one of the trays of this job.')
}

export const requireSlot = (tray: Tray, address: SlotAddress): Outcome<Slot> => {
  const slot = findSlot(tray, address)
  if (slot !== undefined) return done(slot)
  return refuse(
    'The engine of this job has no such plug.',
    `${trayInWords(tray)}, ${slotLabel(address)}`,
    'Choose a cylinder of the layout, with A or B where there are two plugs a cylinder.',
  )
}

/** The same job when the tray is the one it has already. */
export const withTray = (job: Job, tray: Tray): Job =>
  job.trays.includes(tray)
    ? job
    : { ...job, trays: job.trays.map(other => (other.id === tray.id ? tray : other)) }

/** `change` gives back the same slot to leave it alone; the same tray comes back when no slot changes. */
export const mapSlots = (tray: Tray, change: (slot: Slot) => Slot): Tray => {
  const slots = tray.slots.map(change)
  return slots.every((slot, i) => slot === tray.slots[i]) ? tray : { ...tray, slots }
}

/** Applies `change` to the slots at the addresses; refuses when the tray lacks one of them. */
export const changeSlots = (
  tray: Tray,
  addresses: readonly SlotAddress[],
  change: (slot: Slot) => Slot,
): Outcome<Tray> => {
  for (const address of addresses) {
    const slot = requireSlot(tray, address)
    if (!slot.ok) return slot
  }
  return done(
    mapSlots(tray, slot => (addresses.some(address => sameSlot(address, slot)) ? change(slot) : slot)),
  )
}

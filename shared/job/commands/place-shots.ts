// Moving shots about within one tray: from wherever they lie to a slot, or back to the unsorted strip.
import { sameSlot, slotKey, slotLabel } from '../../engine/slots.ts'
import { inCaptureOrder } from '../capture-order.ts'
import type { SlotAddress } from '../command-schema.ts'
import { shotsOfTray } from '../current.ts'
import type { Job } from '../job-schema.ts'
import { limits } from '../limits.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import type { Shot, Slot, Tray } from '../tray-schema.ts'
import { requireSlot, trayInWords } from './tray-access.ts'

/** Where a shot is to go; null is the unsorted strip. */
export type Placement = { shot: string; to: SlotAddress | null }

/** The shots of these ids, or a refusal that names the one the tray lacks. */
export const requireShots = (job: Job, tray: Tray, ids: readonly string[]): Outcome<Map<string, Shot>> => {
  const known = new Map(shotsOfTray(tray).map(shot => [shot.id, shot]))
  for (const id of ids) {
    if (known.has(id)) continue
    const elsewhere = job.trays.find(other => shotsOfTray(other).some(shot => shot.id === id))
    return refuse(
      'This tray has no such shot.',
      `${trayInWords(tray)}, shot ${id}`,
      elsewhere === undefined ? 'Add the photo first.' : `The shot lies on ${trayInWords(elsewhere)}.`,
    )
  }
  return done(known)
}

export const requireRoomInSlot = (tray: Tray, slot: Slot): Outcome<Slot> => {
  if (slot.shots.length <= limits.shotsPerSlot) return done(slot)
  return refuse(
    `One plug holds at most ${limits.shotsPerSlot} shots.`,
    `${trayInWords(tray)}, ${slotLabel(slot)}`,
    'Leave some of the shots unsorted, or remove shots that are not needed.',
  )
}

export const requireRoomInStrip = (tray: Tray): Outcome<Tray> => {
  if (tray.unsorted.length <= limits.unsortedShotsPerTray) return done(tray)
  return refuse(
    `The unsorted strip holds at most ${limits.unsortedShotsPerTray} shots.`,
    trayInWords(tray),
    'Lay out or remove some of the shots first.',
  )
}

const placeKey = (to: SlotAddress | null): string => (to === null ? 'unsorted' : slotKey(to))

/**
 * Carries out the placements in the order given. A shot that lies where it should go stays where it is; the
 * others join at the end of a slot, or by capture time in the unsorted strip.
 */
export const placeShots = (job: Job, tray: Tray, placements: readonly Placement[]): Outcome<Tray> => {
  const known = requireShots(
    job,
    tray,
    placements.map(({ shot }) => shot),
  )
  if (!known.ok) return known
  for (const { to } of placements) {
    const slot = to === null ? null : requireSlot(tray, to)
    if (slot?.ok === false) return slot
  }
  const goal = new Map(placements.map(({ shot, to }) => [shot, placeKey(to)]))

  const settle = (place: string, shots: Shot[]): { staying: Shot[]; arriving: Shot[] } => {
    const here = new Set(shots.map(shot => shot.id))
    const arriving = placements.flatMap(({ shot: id, to }) => {
      const shot = known.value.get(id)
      return shot !== undefined && placeKey(to) === place && !here.has(id) ? [shot] : []
    })
    return { staying: shots.filter(({ id }) => (goal.get(id) ?? place) === place), arriving }
  }

  const slots = tray.slots.map(slot => {
    const { staying, arriving } = settle(slotKey(slot), slot.shots)
    const same = arriving.length === 0 && staying.length === slot.shots.length
    return same ? slot : { ...slot, shots: [...staying, ...arriving] }
  })
  const strip = settle('unsorted', tray.unsorted)
  const unsorted =
    strip.arriving.length > 0
      ? inCaptureOrder([...strip.staying, ...strip.arriving])
      : strip.staying.length === tray.unsorted.length
        ? tray.unsorted
        : strip.staying
  if (unsorted === tray.unsorted && slots.every((slot, i) => slot === tray.slots[i])) return done(tray)

  const placed = { ...tray, slots, unsorted }
  const room = requireRoomInStrip(placed)
  if (!room.ok) return room
  for (const slot of slots) {
    if (tray.slots.some(before => sameSlot(before, slot) && before.shots.length >= slot.shots.length))
      continue
    const fits = requireRoomInSlot(tray, slot)
    if (!fits.ok) return fits
  }
  return done(placed)
}

// Shots on a tray: adding them, laying them out, naming what they show, taking them off again.
import { slotLabel } from '../../engine/slots.ts'
import { inCaptureOrder } from '../capture-order.ts'
import type { CommandOf } from '../command-schema.ts'
import { shotsOf } from '../current.ts'
import type { Job } from '../job-schema.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import type { Shot, Slot, Tray } from '../tray-schema.ts'
import { placeShots, requireRoomInSlot, requireRoomInStrip, requireShots } from './place-shots.ts'
import { mapSlots, requireSlot, requireTray, trayInWords, withTray } from './tray-access.ts'
import { keepKnownShots } from './write-up.ts'

/** Refuses ids that the job has already, on any tray, and ids named twice. */
const requireNewIds = (job: Job, shots: readonly Shot[]): Outcome<null> => {
  const used = new Set(shotsOf(job).map(shot => shot.id))
  for (const shot of shots) {
    if (used.has(shot.id))
      return refuse(
        'There is a shot with this id already.',
        `shot ${shot.id}, file ${shot.fileName}`,
        'Give each added shot an id of its own; to move a shot, move it.',
      )
    used.add(shot.id)
  }
  return done(null)
}

export const addShots = (job: Job, { trayId, shots, to }: CommandOf<'add shots'>): Outcome<Job> => {
  const found = requireTray(job, trayId)
  if (!found.ok) return found
  const tray = found.value
  const fresh = requireNewIds(job, shots)
  if (!fresh.ok) return fresh
  if (to === undefined) {
    const fits = requireRoomInStrip({ ...tray, unsorted: inCaptureOrder([...tray.unsorted, ...shots]) })
    return fits.ok ? done(withTray(job, fits.value)) : fits
  }
  const slot = requireSlot(tray, to)
  if (!slot.ok) return slot
  const fits = requireRoomInSlot(tray, { ...slot.value, shots: [...slot.value.shots, ...shots] })
  if (!fits.ok) return fits
  return done(
    withTray(
      job,
      mapSlots(tray, other => (other === slot.value ? fits.value : other)),
    ),
  )
}

export const moveShots = (job: Job, { trayId, shots, to }: CommandOf<'move shots'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  const placed = placeShots(
    job,
    tray.value,
    [...new Set(shots)].map(shot => ({ shot, to })),
  )
  return placed.ok ? done(withTray(job, placed.value)) : placed
}

export const fillSlots = (job: Job, { trayId, assignments }: CommandOf<'fill slots'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  const ids = new Set<string>()
  for (const { shot, to } of assignments) {
    if (ids.has(shot))
      return refuse(
        'One shot is laid out twice.',
        `${trayInWords(tray.value)}, shot ${shot}, ${slotLabel(to)}`,
        'Give each shot one place.',
      )
    ids.add(shot)
  }
  const placed = placeShots(job, tray.value, assignments)
  return placed.ok ? done(withTray(job, placed.value)) : placed
}

/** Changes the shots that `change` gives back anew, or drops those it gives back as null. */
const mapShots = (tray: Tray, change: (shot: Shot) => Shot | null): Tray => {
  const mapList = (shots: Shot[]): Shot[] => {
    const mapped = shots.flatMap(shot => change(shot) ?? [])
    return mapped.length === shots.length && mapped.every((shot, i) => shot === shots[i]) ? shots : mapped
  }
  const mapSlot = (slot: Slot): Slot => {
    const shots = mapList(slot.shots)
    return shots === slot.shots ? slot : { ...slot, shots }
  }
  const laid = mapSlots(tray, mapSlot)
  const unsorted = mapList(tray.unsorted)
  return unsorted === tray.unsorted ? laid : { ...laid, unsorted }
}

/** Takes the shots off the tray. The photos themselves stay in the store. */
export const removeShots = (job: Job, { trayId, shots }: CommandOf<'remove shots'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  const known = requireShots(job, tray.value, shots)
  if (!known.ok) return known
  const gone = new Set(shots)
  return done(
    keepKnownShots(
      withTray(
        job,
        mapShots(tray.value, shot => (gone.has(shot.id) ? null : shot)),
      ),
    ),
  )
}

export const setShotKind = (job: Job, { trayId, shots, kind }: CommandOf<'set shot kind'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  const known = requireShots(job, tray.value, shots)
  if (!known.ok) return known
  const named = new Set(shots)
  const changed = mapShots(tray.value, shot =>
    named.has(shot.id) && shot.kind !== kind ? { ...shot, kind } : shot,
  )
  return done(withTray(job, changed))
}

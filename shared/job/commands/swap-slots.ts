// Two plugs were laid in each other's place: everything of the two slots changes over, shots and reading.
import { sameSlot } from '../../engine/slots.ts'
import type { CommandOf } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import { done } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import type { Slot } from '../tray-schema.ts'
import { mapSlots, requireSlot, requireTray, withTray } from './tray-access.ts'

const contentOf = (from: Slot, at: Slot): Slot => ({
  cylinder: at.cylinder,
  ...(at.plug !== undefined && { plug: at.plug }),
  shots: from.shots,
  ...(from.reading !== undefined && { reading: from.reading }),
})

/** A slot swapped with itself, or two empty ones, change nothing. */
export const swapSlots = (job: Job, { trayId, a, b }: CommandOf<'swap slots'>): Outcome<Job> => {
  const tray = requireTray(job, trayId)
  if (!tray.ok) return tray
  const first = requireSlot(tray.value, a)
  if (!first.ok) return first
  const second = requireSlot(tray.value, b)
  if (!second.ok) return second
  const bare = [first.value, second.value].every(
    slot => slot.shots.length === 0 && slot.reading === undefined,
  )
  if (bare || sameSlot(a, b)) return done(job)
  const swapped = mapSlots(tray.value, slot => {
    if (slot === first.value) return contentOf(second.value, slot)
    if (slot === second.value) return contentOf(first.value, slot)
    return slot
  })
  return done(withTray(job, swapped))
}

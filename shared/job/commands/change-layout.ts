// The engine turned out to be another: trays are laid out anew, and nothing that was noted is lost on the way.
import { checkLayout } from '../../engine/check-layout.ts'
import { cylindersOf } from '../../engine/relations.ts'
import { slotKey, slotLabel } from '../../engine/slots.ts'
import type { Layout } from '../../engine/layout-schema.ts'
import { sameContent } from '../canonical.ts'
import { inCaptureOrder } from '../capture-order.ts'
import type { CommandOf } from '../command-schema.ts'
import { emptySlots } from '../empty-slots.ts'
import type { Job } from '../job-schema.ts'
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'
import type { Tray } from '../tray-schema.ts'
import { requireRoomInStrip } from './place-shots.ts'
import { trayInWords } from './tray-access.ts'

const layOutAnew = (tray: Tray, layout: Layout): Outcome<Tray> => {
  const before = new Map(tray.slots.map(slot => [slotKey(slot), slot]))
  const slots = emptySlots(layout).map(slot => before.get(slotKey(slot)) ?? slot)
  const kept = new Set(slots.map(slotKey))
  const vanished = tray.slots.filter(slot => !kept.has(slotKey(slot)))
  const read = vanished.find(slot => slot.reading !== undefined)
  if (read !== undefined)
    return refuse(
      `${layout.name} has no ${slotLabel(read)}, and that plug has a reading.`,
      `${trayInWords(tray)}, ${slotLabel(read)}`,
      'Swap the plug to a slot that stays, or clear its reading, then change the layout.',
    )
  const homeless = vanished.flatMap(slot => slot.shots)
  const unsorted = homeless.length === 0 ? tray.unsorted : inCaptureOrder([...tray.unsorted, ...homeless])
  return requireRoomInStrip({ ...tray, slots, unsorted })
}

/**
 * Plugs whose slot both layouts have stay in it. Shots of the others go to the unsorted strip of their tray.
 * Refuses when a reading, or a pull that still counts, would be left without its cylinder.
 */
export const changeLayout = (job: Job, { layout }: CommandOf<'change layout'>): Outcome<Job> => {
  if (sameContent(layout, job.layout)) return done(job)
  const [problem] = checkLayout(layout)
  if (problem !== undefined)
    return refuse(problem.message, `layout "${layout.name}", ${problem.field}`, 'Correct the layout first.')
  const cylinders = new Set(cylindersOf(layout))
  const orphan = job.pulls
    .flatMap(pull => ('cylinder' in pull && pull.voided === undefined ? [pull] : []))
    .find(pull => !cylinders.has(pull.cylinder))
  if (orphan !== undefined)
    return refuse(
      `${layout.name} has no cylinder ${orphan.cylinder}, and there is a ${orphan.test} pull of it.`,
      `pull ${orphan.id}, cylinder ${orphan.cylinder}`,
      'Void the pull with a reason, then change the layout.',
    )
  const trays: Tray[] = []
  for (const tray of job.trays) {
    const laid = layOutAnew(tray, layout)
    if (!laid.ok) return laid
    trays.push(laid.value)
  }
  return done({ ...job, layout, trays })
}

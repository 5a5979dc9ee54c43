// A row of photos laid out over the plugs in the order they were taken: the plan, before anything is moved.
import type { Layout } from '../engine/layout-schema.ts'
import { cylindersOf } from '../engine/relations.ts'
import { plugsOf } from '../engine/slots.ts'
import { inCaptureOrder, timedInCaptureOrder } from './capture-order.ts'
import type { TimedShot } from './capture-order.ts'
import type { SlotAddress } from './command-schema.ts'
import type { Shot } from './tray-schema.ts'

export const fillOrders = ['cylinder', 'firing'] as const
export type FillOrder = (typeof fillOrders)[number]

/**
 * The slots in the order the plugs were photographed: by cylinder number or firing order, beginning at
 * `startCylinder` and coming round; A before B within a cylinder. A start that the engine lacks gives no slots.
 */
export const slotOrder = (layout: Layout, order: FillOrder, startCylinder?: number): SlotAddress[] => {
  const cylinders = order === 'firing' ? layout.firingOrder : cylindersOf(layout).toSorted((a, b) => a - b)
  const start = startCylinder === undefined ? 0 : cylinders.indexOf(startCylinder)
  if (start < 0) return []
  return [...cylinders.slice(start), ...cylinders.slice(0, start)].flatMap(cylinder =>
    plugsOf(layout, cylinder),
  )
}

const secondsApart = (a: TimedShot, b: TimedShot): number =>
  a.moment === null || b.moment === null
    ? 0
    : b.moment.seconds - a.moment.seconds + (b.moment.fraction - a.moment.fraction)

/**
 * Dated shots in capture order, a new group wherever more than `gapSeconds` pass between two: the pause in which
 * the next plug was picked up. Undated shots are in no group.
 */
export const groupByTime = (shots: readonly Shot[], gapSeconds: number): Shot[][] => {
  const dated = timedInCaptureOrder(shots).filter(({ moment }) => moment !== null)
  const groups: Shot[][] = []
  dated.forEach((current, i) => {
    const before = dated[i - 1]
    const group = groups.at(-1)
    if (before === undefined || group === undefined || secondsApart(before, current) > gapSeconds)
      groups.push([current.shot])
    else group.push(current.shot)
  })
  return groups
}

export type FillRequest = {
  shots: readonly Shot[]
  /** Slots in the order to fill them, from `slotOrder`. */
  slots: readonly SlotAddress[]
} & (
  | {
      /** Photos taken of each plug; at least 1. */
      perSlot: number
    }
  | {
      /** Pause in seconds after which the next plug begins. */
      gapSeconds: number
    }
)

export type FillPlan = {
  /** As the command 'fill slots' takes them. */
  assignments: { shot: string; to: SlotAddress }[]
  /** Slots that get no photo, or fewer than were said to be taken of each plug. */
  missing: SlotAddress[]
  /** Shots beyond the last slot, and undated ones where times decide; in capture order. */
  leftOver: Shot[]
}

const chunks = (shots: readonly Shot[], size: number): Shot[][] =>
  Array.from({ length: Math.ceil(shots.length / size) }, (_, i) => shots.slice(i * size, (i + 1) * size))

/** Each shot is used at most once and none is dropped: it is assigned or left over. */
export const planFill = (request: FillRequest): FillPlan => {
  const ordered = inCaptureOrder(request.shots)
  const expected = 'perSlot' in request ? Math.max(1, Math.floor(request.perSlot)) : 1
  const groups =
    'perSlot' in request ? chunks(ordered, expected) : groupByTime(request.shots, request.gapSeconds)
  const assignments = request.slots.flatMap((to, i) =>
    (groups[i] ?? []).map(({ id: shot }) => ({ shot, to })),
  )
  const assigned = new Set(assignments.map(({ shot }) => shot))
  return {
    assignments,
    missing: request.slots.filter((_, i) => (groups[i]?.length ?? 0) < expected),
    leftOver: ordered.filter(({ id }) => !assigned.has(id)),
  }
}

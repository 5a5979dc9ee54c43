// The bare slots of a tray: one for each plug of the engine.
import { slotsOf } from '../engine/slots.ts'
import type { Layout } from '../engine/layout-schema.ts'
import type { Slot } from './tray-schema.ts'

export const emptySlots = (layout: Layout): Slot[] =>
  slotsOf(layout).map(address => ({ ...address, shots: [] }))

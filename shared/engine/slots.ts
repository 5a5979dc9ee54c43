// Every plug's place on a tray: one a cylinder, or A and B where the engine has two plugs a cylinder.
import type { SlotAddress } from '../job/command-schema.ts'
import type { Layout } from './layout-schema.ts'

/** All slots of a layout, by rising cylinder number, A before B. */
export function slotsOf(layout: Layout): SlotAddress[] {
  const cylinders = layout.banks.flatMap(bank => bank.cylinders).toSorted((a, b) => a - b)
  return cylinders.flatMap(cylinder => plugsOf(layout, cylinder))
}

/** The slots of one cylinder. */
export function plugsOf(layout: Layout, cylinder: number): SlotAddress[] {
  if (layout.plugsPerCylinder === 1) return [{ cylinder }]
  return [
    { cylinder, plug: 'A' },
    { cylinder, plug: 'B' },
  ]
}

/** "3", or "3A" with two plugs a cylinder: for keys and file names. */
export const slotKey = (address: SlotAddress): string => `${address.cylinder}${address.plug ?? ''}`

export const sameSlot = (a: SlotAddress, b: SlotAddress): boolean => slotKey(a) === slotKey(b)

/** For people: "cylinder 3", "cylinder 3, plug A". */
export const slotLabel = (address: SlotAddress): string =>
  address.plug ? `cylinder ${address.cylinder}, plug ${address.plug}` : `cylinder ${address.cylinder}`

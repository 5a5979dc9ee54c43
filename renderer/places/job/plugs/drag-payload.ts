// What travels in a drag inside the plugs area: shots on their way to a slot, or a whole slot to swap with another.
import type { SlotAddress } from '../../../../shared/job/command-schema.ts'

export const shotsType = 'application/x-plugtray-shots'
export const slotType = 'application/x-plugtray-slot'

/** Shot ids hold no spaces, so a space can part them. */
export const packShots = (ids: readonly string[]): string => ids.join(' ')

export const unpackShots = (packed: string): string[] =>
  packed.split(' ').filter(id => /^[A-Za-z0-9_-]{1,64}$/.test(id))

export const packSlot = (slot: SlotAddress): string => `${slot.cylinder}${slot.plug ?? ''}`

export function unpackSlot(packed: string): SlotAddress | undefined {
  const parts = /^(\d{1,2})([AB])?$/.exec(packed)
  if (!parts) return undefined
  const cylinder = Number(parts[1])
  const plug = parts[2]
  return plug === 'A' || plug === 'B' ? { cylinder, plug } : { cylinder }
}

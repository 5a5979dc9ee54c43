// One piece of evidence on one cylinder: what it was read from, what it says, and what may follow.
import type { SlotAddress } from '../job/command-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import type { MeaningOf } from '../plug/meaning.ts'

export type State = 'sound' | 'watch' | 'fault' | 'unknown'

export type Evidence = {
  from: 'plug' | TestKind
  state: 'sound' | 'watch' | 'fault'
  text: string
  /** The same in a few words. */
  headline: string
  /** For a customer. */
  plain: string
  /** What to look at next; empty when nothing follows. */
  next: string
  source: string
  /** For a plug: the cylinder, the plug as a part, or the well outside the chamber. */
  of?: MeaningOf
  /** The plug it was read from. */
  slot?: SlotAddress
}

export const severity: Readonly<Record<Evidence['state'], number>> = { sound: 0, watch: 1, fault: 2 }

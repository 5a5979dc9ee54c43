// What one sign on a plug means: how worrying, for which part, in the trade's words and in plain ones, and what is next.

export type PlugState = 'sound' | 'watch' | 'fault'

/** What the sign speaks of: the cylinder's burning and sealing, the plug as a part, or the well outside the chamber. */
export type MeaningOf = 'cylinder' | 'plug' | 'well'

export type Meaning = {
  state: PlugState
  of: MeaningOf
  /** For the technician. */
  text: string
  /** For a customer, without trade words. */
  plain: string
  /** What to look at next; empty when nothing follows. */
  next: string
  /** Where it was read, or "common practice". */
  source: string
}

export const plugSources = {
  practice: 'common practice',
  fire: 'US Army TM 5-4210-230-14&P-1',
  army: 'US Army TM 10-3930-653-14&P and TM 10-3930-633-12',
  navy: 'US Navy NAVEDTRA 14273',
  faa: 'FAA AC 43.13-1B',
  faaHandbook: 'FAA-H-8083-32',
  dodge: 'Dodge spark plug conditions page (1998)',
  gm: 'General Motors spark plug inspection pages (2000-2006)',
  makers: 'plug makers\u2019 diagnosis and catalogue pages',
  table: 'stationary-engine plug condition table (2016)',
  charts: 'reproduced plug condition charts',
} as const

// The write-up as data: what was complained of, found, measured, done and proven. Drawn as PDF and as plain text.
import type { CylinderState } from '../diagnosis/condition-map.ts'
import type { Layout } from '../engine/layout-schema.ts'
import type { Stage } from '../job/tray-schema.ts'

export type Audience = 'shop' | 'customer'

export type WriteUpTable = { title: string; columns: string[]; rows: string[][]; notes: string[] }

export type WriteUpPhoto = { shotId: string; photo: string; caption: string; alt: string }

export type WriteUpFinding = {
  cylinder: number
  state: CylinderState['state']
  lines: string[]
  /** Those of the lines that judge nothing and still tell something, such as what oil did in a wet pull. */
  noted: string[]
}

export type WriteUp = {
  audience: Audience
  title: string
  /** Demonstration jobs say so on the first page. */
  invented: boolean
  facts: [label: string, value: string][]
  complaint: string
  /** A few honest sentences that open the report. */
  summary: string[]
  layout: Layout
  /** The stage that `states`, `findings` and `engine` speak of. */
  stage: Stage
  states: CylinderState[]
  findings: WriteUpFinding[]
  engine: string[]
  /** What was measured, each with its limits; for the customer only what shows the finding. */
  tables: WriteUpTable[]
  /** The same readings in one line a test, for plain text. */
  readings: string[]
  photos: WriteUpPhoto[]
  /** The cause as the technician stated it; empty when none was. Never worked out from the readings. */
  cause: string
  /** The work done, in the technician's words; empty when none is recorded. */
  work: string
  /** Cause and work as they are printed. */
  repair: string[]
  /** Before and after, or why there is no proof. */
  proof: string[]
  notTested: string[]
  cautions: string[]
  note: string
}

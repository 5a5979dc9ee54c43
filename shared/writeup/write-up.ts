// The write-up as data: what was complained of, found, measured, done and proven. Drawn as PDF and as plain text.
import type { CylinderState } from '../diagnosis/condition-map.ts'
import type { Layout } from '../engine/layout-schema.ts'
import type { Stage } from '../job/tray-schema.ts'

export type Audience = 'shop' | 'customer'

export type WriteUpTable = { title: string; columns: string[]; rows: string[][]; notes: string[] }

export type WriteUpPhoto = { shotId: string; photo: string; caption: string; alt: string }

export type WriteUpFinding = { cylinder: number; state: CylinderState['state']; lines: string[] }

export type WriteUp = {
  audience: Audience
  title: string
  /** Demonstration jobs say so on the first page. */
  invented: boolean
  facts: [label: string, value: string][]
  complaint: string
  /** One or two honest sentences that open the report. */
  summary: string[]
  layout: Layout
  stage: Stage
  states: CylinderState[]
  findings: WriteUpFinding[]
  engine: string[]
  tables: WriteUpTable[]
  photos: WriteUpPhoto[]
  /** Work done, if any. */
  repair: string[]
  /** Before and after, or why there is no proof. */
  proof: string[]
  notTested: string[]
  cautions: string[]
  note: string
}

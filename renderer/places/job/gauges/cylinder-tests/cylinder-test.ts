// What a test made cylinder by cylinder is to the grid and the guided walk: its fields, and how a row becomes a pull.
import type { TestConditions } from '../../../../../shared/gauges/conditions-schema.ts'
import type { Job } from '../../../../../shared/job/job-schema.ts'
import type { Pull, TestKind } from '../../../../../shared/job/pull-schema.ts'
import type { Stage } from '../../../../../shared/job/tray-schema.ts'
import type { UnitChoice } from '../../../../../shared/contract/settings-schema.ts'
import type { BarProps } from '../bar.tsx'
import type { Field, Typed } from '../entry/field.ts'

/** What every pull of a cylinder begins with. */
export type PullBase = { id: string; stage: Stage; cylinder: number; at: string; instrument?: string }

export type CylinderPictures = { title: string; bars: ReadonlyMap<number, BarProps> }

export type CylinderTest = {
  test: TestKind
  /** Typed once for all rows, above the grid. */
  settings: readonly Field[]
  initial: Typed
  /** The columns may follow the settings. */
  columns: (settings: Typed) => readonly Field[]
  /** Null until what is needed stands in the row; words where it stands there and something else is missing. */
  pull: (row: Typed, base: PullBase, settings: Typed, conditions: TestConditions) => Pull | string | null
  /** A question about an unlikely entry, which is kept all the same. */
  ask?: (pull: Pull) => string | undefined
  /** Usual number of pulls on each cylinder. */
  pullsEach: number
  pictures?: (job: Job, stage: Stage) => CylinderPictures
}

export type DefineCylinderTest = (units: UnitChoice) => CylinderTest

// What a test of the whole engine is to its short form: the fields, which may follow what is chosen, and the pull.
import type { Pull, TestKind } from '../../../../../shared/job/pull-schema.ts'
import type { Stage } from '../../../../../shared/job/tray-schema.ts'
import type { UnitChoice } from '../../../../../shared/contract/settings-schema.ts'
import type { Field, Typed } from '../entry/field.ts'

export type EnginePullBase = { id: string; stage: Stage; at: string; instrument?: string }

export type EngineTest = {
  test: TestKind
  /** On the button that keeps the entry. */
  keepWords: string
  initial: Typed
  fields: (typed: Typed) => readonly Field[]
  /** Null until what is needed stands in the form; words where something else is missing. */
  pull: (typed: Typed, base: EnginePullBase) => Pull | string | null
  /** What is still missing, said when a person keeps too early. */
  needs: string
  /** Fields that keep their text for the next entry. */
  stays: readonly string[]
}

export type DefineEngineTest = (units: UnitChoice) => EngineTest

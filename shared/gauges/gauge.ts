// What every test brings along: its title, the cautions and steps at the place they are needed, and its judge.
import type { Job } from '../job/job-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { ShownUnits } from './shown.ts'
import type { GaugeVerdict } from './verdict.ts'

export type Gauge = {
  test: TestKind
  title: string
  /** Shown where the test is entered, before its steps. */
  cautions: readonly string[]
  steps: readonly string[]
  /** Worded in psi and inHg unless other units are asked for. */
  judge: (job: Job, stage: Stage, units?: ShownUnits) => GaugeVerdict[]
}

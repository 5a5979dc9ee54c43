// What `plugtray assess` prints: every verdict, the condition map and the likely causes, in one document. Parts not built are absent.
import { judgeAll } from '../gauges/gauges.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import type { Job } from '../job/job-schema.ts'
import { stagesOf } from '../job/stage.ts'
import type { Stage } from '../job/tray-schema.ts'
import { causeReport } from './cause-report.ts'
import { conditionMap } from './condition-map.ts'
import { engineRemarks } from './engine-remarks.ts'
import type { Evidence, State } from './evidence.ts'
import type { CauseShare } from './evidence-model/diagnose.ts'

export type Assessment = {
  /** The stage that `cylinders` speaks of. */
  stage: Stage
  tests: GaugeVerdict[]
  cylinders: {
    cylinder: number
    state: State
    headline: string
    evidence: Evidence[]
    causes: CauseShare[]
  }[]
  /** Causes of the whole engine; `leftOut`: chance of more faults at once than are weighed. */
  engine: { causes: CauseShare[]; leftOut: number }
  flags: { kind: string; text: string }[]
}

/** Assesses the engine as it was found; `tests` also holds what was measured after the repair. */
export function assess(job: Job, stage: Stage = 'as found'): Assessment {
  const causes = causeReport(job, stage)
  return {
    stage,
    tests: stagesOf(job).flatMap(one => judgeAll(job, one)),
    cylinders: conditionMap(job, stage).map(one => ({
      ...one,
      causes: causes.byCylinder.get(one.cylinder) ?? [],
    })),
    engine: { causes: causes.engine, leftOut: causes.leftOut },
    flags: engineRemarks(job, stage).map(({ kind, text }) => ({ kind, text })),
  }
}

// What `plugtray assess` prints: every verdict and the condition map, in one document. Parts not built are absent.
import { judgeAll } from '../gauges/gauges.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import type { Job } from '../job/job-schema.ts'
import { stagesOf } from '../job/stage.ts'
import type { Stage } from '../job/tray-schema.ts'
import { conditionMap } from './condition-map.ts'
import { engineRemarks } from './engine-remarks.ts'
import type { Evidence, State } from './evidence.ts'

export type Assessment = {
  /** The stage that `cylinders` speaks of. */
  stage: Stage
  tests: GaugeVerdict[]
  cylinders: { cylinder: number; state: State; headline: string; evidence: Evidence[] }[]
  flags: { kind: string; text: string }[]
}

/** Assesses the engine as it was found; `tests` also holds what was measured after the repair. */
export function assess(job: Job, stage: Stage = 'as found'): Assessment {
  return {
    stage,
    tests: stagesOf(job).flatMap(one => judgeAll(job, one)),
    cylinders: conditionMap(job, stage),
    flags: engineRemarks(job, stage).map(({ kind, text }) => ({ kind, text })),
  }
}

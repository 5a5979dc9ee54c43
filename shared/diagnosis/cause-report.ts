// The posterior as `plugtray assess` prints it: causes that the evidence raised, or that are likely, with what raised them.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type CauseShare, diagnose } from './evidence-model/diagnose.ts'

export type ReportedCauses = {
  byCylinder: ReadonlyMap<number, CauseShare[]>
  engine: CauseShare[]
  /** Chance of more faults at once than are weighed. */
  leftOut: number
}

/** Less likely ones are not listed. */
const leastShown = 0.02

/** Nothing is listed where nothing was measured: chances before any evidence say nothing of this engine. */
export function causeReport(job: Job, stage: Stage): ReportedCauses {
  const { cylinders, engine, leftOut } = diagnose(job, stage)
  const shown = (causes: readonly CauseShare[]): CauseShare[] =>
    causes.filter(one => one.evidence.length > 0 && one.probability >= leastShown)
  return {
    byCylinder: new Map(cylinders.map(({ cylinder, causes }) => [cylinder, shown(causes)])),
    engine: shown(engine.causes),
    leftOut,
  }
}

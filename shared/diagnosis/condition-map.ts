// The condition map: what is known of each cylinder, worst first, with the evidence behind it. Kept in this one place.
import { cylindersOf } from '../engine/relations.ts'
import { judgeAll } from '../gauges/gauges.ts'
import { type ShownUnits, tradeUnits } from '../gauges/shown.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type Evidence, severity, type State } from './evidence.ts'
import { gaugeEvidence } from './gauge-evidence.ts'
import { plugEvidence, plugReadings } from './plug-evidence.ts'

export type { Evidence, State }

export type CylinderState = {
  cylinder: number
  state: State
  /** The most telling piece of evidence in a few words. */
  headline: string
  /** Worst first. */
  evidence: Evidence[]
}

/**
 * Worst of what is known; unknown where nothing is known. Voided pulls do not count, nor does what is merely noted. Oil in
 * the well is at most "watch", whatever else is said of the well. One entry a cylinder, by number.
 */
export function conditionMap(job: Job, stage: Stage, units: ShownUnits = tradeUnits): CylinderState[] {
  const verdicts = judgeAll(job, stage, units)
  const readings = plugReadings(job, stage)
  return cylindersOf(job.layout)
    .toSorted((a, b) => a - b)
    .map(cylinder => {
      const evidence = [...plugEvidence(readings, cylinder), ...gaugeEvidence(verdicts, cylinder)].toSorted(
        (a, b) => severity[b.state] - severity[a.state],
      )
      const [worst] = evidence
      return {
        cylinder,
        state: worst?.state ?? 'unknown',
        headline: worst?.headline ?? 'nothing known yet',
        evidence,
      }
    })
}

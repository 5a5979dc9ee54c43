// What idle vacuum is held against: a limit typed from the service information where there is one, else the shop's rule,
// lowered by what the atmosphere has fallen.
import type { Job } from '../job/job-schema.ts'
import { atmosphereOf, fallOf, idleBand } from './atmosphere.ts'
import { ruleSet } from './rule-sets.ts'
import { type ShownUnits, vacuumWords } from './shown.ts'
import { sources } from './sources.ts'
import { inHg } from './vacuum-values.ts'

export type IdleExpectation = {
  /** inHg, here and today. */
  low: number
  high: number
  /** Which edges were typed for this vehicle. */
  typed: 'both' | 'low' | 'high' | 'none'
  source: string
}

const altitudeSource = 'altitude: US Army TM 9-4910-677-14&P and US Standard Atmosphere 1976'

/**
 * A typed edge stands as it was typed, without correction. The other edge comes from the rule; where the two contradict
 * each other it is left open (no vacuum, or the air pressure).
 */
export function idleExpectation(job: Job): IdleExpectation {
  const { idleVacuumMinimum, idleVacuumMaximum } = job.circumstances.specification ?? {}
  const air = atmosphereOf(job.circumstances)
  const rule = ruleSet('idleVacuum', job)
  const band = idleBand(air, rule)
  const general = `${rule.source} at sea level; ${altitudeSource}`
  if (!idleVacuumMinimum && !idleVacuumMaximum) return { ...band, typed: 'none', source: general }
  const low = idleVacuumMinimum && inHg(idleVacuumMinimum)
  const high = idleVacuumMaximum && inHg(idleVacuumMaximum)
  if (low !== undefined && high !== undefined) return { low, high, typed: 'both', source: sources.typed }
  const mixed = `${sources.typed}; the other edge: ${general}`
  if (low !== undefined)
    return { low, high: band.high > low ? band.high : Math.max(low, air.inHg), typed: 'low', source: mixed }
  const top = high ?? band.high
  return { low: band.low < top ? band.low : Math.min(0, top), high: top, typed: 'high', source: mixed }
}

/** The band in words, with what was typed named as such. */
export function expectationWords({ low, high, typed }: IdleExpectation, job: Job, units: ShownUnits): string {
  const band = `${vacuumWords(low, units)} to ${vacuumWords(high, units)}`
  if (typed === 'none') return band
  const which =
    typed === 'both' ? 'as specified' : typed === 'low' ? 'least as specified' : 'most as specified'
  const fall = fallOf(atmosphereOf(job.circumstances))
  return Math.abs(fall) < 0.5
    ? `${band}, ${which}`
    : `${band}, ${which} and not corrected for the air here; if that was meant for sea level, take ${vacuumWords(fall, units)} off`
}

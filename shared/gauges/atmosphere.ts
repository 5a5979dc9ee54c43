// The air pressure where the engine stands: the barometer if it was read, else the altitude's standard atmosphere.
import type { Circumstances } from '../job/job-schema.ts'
import { seaLevelPressure, standardPressureAt, toVacuum } from '../units/convert.ts'

export type Atmosphere = { inHg: number; basis: 'barometer' | 'altitude' | 'assumed sea level' }

/** Source of the altitude model: US Standard Atmosphere 1976. */
export function atmosphereOf(circumstances: Circumstances): Atmosphere {
  if (circumstances.barometer) return { inHg: toVacuum(circumstances.barometer, 'inHg'), basis: 'barometer' }
  if (circumstances.altitude) return { inHg: standardPressureAt(circumstances.altitude), basis: 'altitude' }
  return { inHg: seaLevelPressure, basis: 'assumed sea level' }
}

/** Local air pressure as a part of that at sea level: what a compression reading and a cranking vacuum follow. */
export const pressureRatio = (atmosphere: Atmosphere): number => atmosphere.inHg / seaLevelPressure

/**
 * Lower and upper edge of normal idle vacuum, inHg. At altitude the manifold's absolute pressure stays put, so the fall
 * of the atmosphere is subtracted; scaling by the pressure ratio would expect too much.
 */
export function idleBand(atmosphere: Atmosphere): { low: number; high: number } {
  const fall = seaLevelPressure - atmosphere.inHg
  return { low: 17 - fall, high: 21 - fall }
}

/** Least flutter while cranking with the throttle shut, about 2 to 2.5 inHg; so small a reading follows the ratio. */
export function crankingBand(atmosphere: Atmosphere): { low: number; high: number } {
  const ratio = pressureRatio(atmosphere)
  return { low: 2 * ratio, high: 2.5 * ratio }
}

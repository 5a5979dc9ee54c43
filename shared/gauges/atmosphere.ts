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

/** How far the air pressure here has fallen from that of the standard atmosphere at sea level, inHg. */
export const fallOf = (atmosphere: Atmosphere): number => seaLevelPressure - atmosphere.inHg

/**
 * Lower and upper edge of normal idle vacuum, inHg; `atSeaLevel` is the rule in use, the common one if left out. At
 * altitude the manifold's absolute pressure stays put, so the fall of the atmosphere is subtracted; scaling by the
 * pressure ratio would expect too much.
 */
export function idleBand(
  atmosphere: Atmosphere,
  atSeaLevel: { low: number; high: number } = { low: 17, high: 21 },
): { low: number; high: number } {
  const fall = fallOf(atmosphere)
  return { low: atSeaLevel.low - fall, high: atSeaLevel.high - fall }
}

/** Least vacuum while cranking with the throttle shut, and what is surely enough, inHg; it follows the ratio. */
export function crankingBand(
  atmosphere: Atmosphere,
  atSeaLevel: { least: number; sure: number },
): { least: number; sure: number } {
  const ratio = pressureRatio(atmosphere)
  return { least: atSeaLevel.least * ratio, sure: atSeaLevel.sure * ratio }
}

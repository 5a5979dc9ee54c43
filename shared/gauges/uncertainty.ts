// How sure a reading is: bounds become standard uncertainties, combine as squares and give the interval that verdicts
// keep clear of. Sources: JCGM 100:2008, 4.3.7 (uniform within bounds), 5.1.2 (combining), 6.2.1 (k = 2).
import type { Job } from '../job/job-schema.ts'
import { toPressure } from '../units/convert.ts'
import type { Pressure } from '../units/quantity.ts'
import { readingError } from './calling.ts'

const isOfPressure = (unit: string | undefined): unit is Pressure['unit'] =>
  unit === 'psi' || unit === 'kPa' || unit === 'bar'

/** Standard uncertainty of a value that lies anywhere within its bounds alike. */
export const ofBounds = (halfWidth: number): number => halfWidth / Math.sqrt(3)

/** Combined standard uncertainty of contributions that do not depend on each other. */
export const combined = (standard: readonly number[]): number => Math.hypot(...standard)

const coverage = 2

/** Half width of the interval with k = 2, but never wider than all bounds at their worst together. */
export const intervalOf = (halfWidths: readonly number[]): number =>
  Math.min(
    coverage * combined(halfWidths.map(ofBounds)),
    halfWidths.reduce((sum, one) => sum + one, 0),
  )

/** Bounds of one reading of a pressure gauge, psi. */
export type GaugeBounds = {
  /** Half a scale division. */
  read: number
  /** What the accuracy class allows; 0 where none is stated. */
  byClass: number
}

/** From the tester that a pull names; a common 5 psi scale where nothing better is known. */
export function pressureBounds(
  { instruments }: Pick<Job, 'instruments'>,
  id: string | undefined,
): GaugeBounds {
  const named = instruments?.find(one => one.id === id)
  const unit = named?.unit
  if (named === undefined || !isOfPressure(unit)) return { read: readingError.psi, byClass: 0 }
  const { division, accuracyPercent, fullScale } = named
  const inPsi = (value: number) => toPressure({ value, unit }, 'psi')
  return {
    read: division === undefined ? readingError.psi : inPsi(division) / 2,
    byClass:
      accuracyPercent === undefined || fullScale === undefined
        ? 0
        : inPsi((accuracyPercent * fullScale) / 100),
  }
}

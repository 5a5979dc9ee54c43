// How near one vacuum, and one engine speed, can be read: by the tester that the pull names, else as common gauges are.
import type { Job } from '../job/job-schema.ts'
import { toVacuum } from '../units/convert.ts'
import type { Vacuum } from '../units/quantity.ts'
import { readingError } from './calling.ts'
import type { GaugeBounds } from './uncertainty.ts'

type Testers = Pick<Job, 'instruments'>

const isOfVacuum = (unit: string | undefined): unit is Vacuum['unit'] => unit === 'inHg' || unit === 'kPa'

/** In inHg; `byClass` is one and the same for all readings of a gauge, so it falls out of their differences. */
export function vacuumBounds({ instruments }: Testers, id: string | undefined): GaugeBounds {
  const named = instruments?.find(one => one.id === id)
  const unit = named?.unit
  if (named === undefined || !isOfVacuum(unit)) return { read: readingError.inHg, byClass: 0 }
  const { division, accuracyPercent, fullScale } = named
  const inMercury = (value: number) => toVacuum({ value, unit }, 'inHg')
  return {
    read: division === undefined ? readingError.inHg : inMercury(division) / 2,
    byClass:
      accuracyPercent === undefined || fullScale === undefined
        ? 0
        : inMercury((accuracyPercent * fullScale) / 100),
  }
}

/** In rpm. A finer scale does not help: the engine itself wanders while it is read. */
export function speedBound({ instruments }: Testers, id: string | undefined): number {
  const named = instruments?.find(one => one.id === id)
  return named?.unit === 'rpm' && named.division !== undefined
    ? Math.max(readingError.rpm, named.division / 2)
    : readingError.rpm
}

// How finely a fuel pressure gauge is read, and how sure a pressure or a drop read on it is. All in psi.
import type { Job } from '../job/job-schema.ts'
import { toPressure } from '../units/convert.ts'
import type { Pressure } from '../units/quantity.ts'
import { tidy } from './middle.ts'
import { intervalOf, pressureBounds } from './uncertainty.ts'

/** Half a division of a 1 psi scale, as fuel gauges have. Common practice; a named tester says its own. */
const usualRead = 0.5

const boundsOf = (job: Pick<Job, 'instruments'>, id: string | undefined) =>
  id !== undefined && job.instruments?.some(one => one.id === id) === true
    ? pressureBounds(job, id)
    : { read: usualRead, byClass: 0 }

/** Half width of one reading. */
export function readingInterval(job: Pick<Job, 'instruments'>, id: string | undefined): number {
  const { read, byClass } = boundsOf(job, id)
  return intervalOf([read, byClass])
}

/** Half width of the difference of two readings on one gauge: its class error is the same in both. */
export function differenceInterval(job: Pick<Job, 'instruments'>, id: string | undefined): number {
  const { read } = boundsOf(job, id)
  return intervalOf([read, read])
}

export const fuelPsi = (pressure: Pressure): number => tidy(toPressure(pressure, 'psi'))

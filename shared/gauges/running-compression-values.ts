// What the running-compression pulls of one stage come to: at idle and in a snap, beside the same cylinder's cranking
// compression. In psi.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { compressionValues, inPsi } from './compression-values.ts'
import { median, rangeOf } from './middle.ts'
import { pressureBounds } from './uncertainty.ts'
import { byCylinder } from './verdict.ts'

/** A value in psi with the half width of its interval. */
export type Sure = { psi: number; plusMinus: number }

export type RunningValue = {
  cylinder: number
  idle?: Sure
  snap?: Sure
  /** Dry, while cranking. */
  cranking?: Sure
  /** Testers that its pulls name. */
  testers: string[]
}

/** One value a cylinder that has valid pulls, by cylinder number. */
export function runningValues(job: Job, stage: Stage): RunningValue[] {
  const pulls = validPulls(job, 'running compression', stage)
  const cranked = compressionValues(job, stage)
  return [...new Set(pulls.map(pull => pull.cylinder))]
    .map(cylinder => {
      const mine = pulls.filter(pull => pull.cylinder === cylinder)
      const { dry, between = 0 } = cranked.find(one => one.cylinder === cylinder) ?? {}
      return {
        cylinder,
        ...of(job, mine, 'idle'),
        ...of(job, mine, 'snap'),
        ...(dry === undefined || dry <= 0 ? {} : { cranking: { psi: dry, plusMinus: between } }),
        testers: [
          ...new Set(mine.flatMap(({ instrument }) => (instrument === undefined ? [] : [instrument]))),
        ].toSorted(),
      }
    })
    .toSorted(byCylinder)
}

function of(
  job: Job,
  pulls: readonly PullOf<'running compression'>[],
  field: 'idle' | 'snap',
): { idle?: Sure; snap?: Sure } {
  const read = pulls.flatMap(({ entry, instrument }) => {
    const quantity = entry[field]
    return quantity ? [{ psi: inPsi(quantity), error: pressureBounds(job, instrument).read }] : []
  })
  if (read.length === 0) return {}
  const values = read.map(one => one.psi)
  return {
    [field]: {
      psi: median(values),
      plusMinus: Math.max(rangeOf(values) / 2, ...read.map(one => one.error)),
    },
  }
}

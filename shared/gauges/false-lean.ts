// What makes an exhaust read lean although the mixture is right: a dead cylinder, or a leak ahead of the sensor.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { judgeBalance } from './balance.ts'
import { judgeMisfireCounts } from './misfire-counts.ts'
import { inWords } from './shown.ts'

/** Reasons found in the job, as half sentences; empty where none is known. */
export function falseLean(job: Job, stage: Stage): string[] {
  const dead = [...judgeBalance(job, stage), ...judgeMisfireCounts(job, stage)]
    .filter(one => one.verdict === 'outside')
    .map(one => one.cylinder)
  const cylinders = [...new Set(dead)].toSorted((a, b) => a - b)
  const blows = validPulls(job, 'observation', stage).some(
    ({ entry }) => entry.seen === 'exhaust blows' && entry.answer === 'yes',
  )
  return [
    ...(cylinders.length > 0
      ? [`cylinder ${inWords(cylinders)} does not burn all its air, and that oxygen reads as lean`]
      : []),
    ...(blows ? ['the exhaust blows, and a leak ahead of the sensor reads as lean'] : []),
  ]
}

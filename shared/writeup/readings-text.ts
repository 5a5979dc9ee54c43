// The readings of one stage in a line a test, as they go into a repair order.
import type { UnitChoice } from '../contract/settings-schema.ts'
import { balanceValues } from '../gauges/balance-values.ts'
import { compressionValues } from '../gauges/compression-values.ts'
import { pressureShown } from '../gauges/shown.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { formatNumber, formatVacuum } from '../units/format.ts'

/** "Compression as found, psi: 1: 152; 2: 150; 4: 118, wet 158." and likewise for the other tests done. */
export function readingsText(job: Job, stage: Stage, units: UnitChoice): string[] {
  return [...compression(job, stage, units), ...balance(job, stage), ...vacuum(job, stage, units)]
}

function compression(job: Job, stage: Stage, units: UnitChoice): string[] {
  const values = compressionValues(job, stage)
  if (values.length === 0) return []
  const { pressure } = units
  const number = (psi: number) => String(pressureShown(psi, units).value)
  const each = values.map(({ cylinder, dry, wet, firstPuff }) =>
    [
      `${cylinder}: ${dry === undefined ? 'dry not pulled' : number(dry)}`,
      ...(firstPuff === undefined ? [] : [`first puff ${number(firstPuff)}`]),
      ...(wet === undefined ? [] : [`wet ${number(wet)}`]),
    ].join(', '),
  )
  const error = Math.max(...values.map(value => value.plusMinus))
  return [`Compression ${stage}, ${pressure}, each \u00b1${number(error)} or less: ${each.join('; ')}.`]
}

function balance(job: Job, stage: Stage): string[] {
  const values = balanceValues(job, stage)
  if (values.length === 0) return []
  const each = values.map(({ cylinder, drop }) => `${cylinder}: ${formatNumber(drop, 0)}`)
  return [`Cylinder balance ${stage}, drop in rpm: ${each.join('; ')}.`]
}

function vacuum(job: Job, stage: Stage, units: UnitChoice): string[] {
  const pulls = validPulls(job, 'vacuum', stage)
  if (pulls.length === 0) return []
  const each = pulls.map(({ entry }) =>
    [
      `${entry.phase} ${formatVacuum(entry.reading, units.vacuum)}`,
      ...(entry.rebound ? [`rebound ${formatVacuum(entry.rebound, units.vacuum)}`] : []),
      ...(entry.needle ? [`needle ${entry.needle}`] : []),
    ].join(', '),
  )
  return [`Vacuum ${stage}: ${each.join('; ')}.`]
}

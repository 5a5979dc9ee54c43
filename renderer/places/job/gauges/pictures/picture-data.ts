// What the picture of a test draws, a row a cylinder, in the units shown; the same rules as the verdicts.
import { balanceBars, compressionBars } from '../../../../../shared/gauges/bars.ts'
import { leakDownValues } from '../../../../../shared/gauges/leak-down-values.ts'
import { ruleSet } from '../../../../../shared/gauges/rule-sets.ts'
import type { ShownUnits } from '../../../../../shared/gauges/shown.ts'
import type { Job } from '../../../../../shared/job/job-schema.ts'
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import type { Stage } from '../../../../../shared/job/tray-schema.ts'
import { toPressure } from '../../../../../shared/units/convert.ts'
import { pressureDigits } from '../../../../../shared/units/format.ts'

export type PictureRow = {
  cylinder: number
  value: number
  /** Half width of the interval. */
  plusMinus: number
  firstPuff?: number
  wet?: number
  /** A line of this row alone. */
  limit?: number
}

export type PictureData = {
  title: string
  unit: string
  digits: number
  rows: PictureRow[]
  /** Lines across all rows. */
  limits: { at: number; label: string }[]
  limitTitle?: string
}

/** Undefined for a test without a picture or without readings: missing is a gap, not zero. */
export function pictureData(
  job: Job,
  test: TestKind,
  stage: Stage,
  units: ShownUnits,
): PictureData | undefined {
  const found = dataOf(job, test, stage, units)
  return found === undefined || found.rows.length === 0 ? undefined : found
}

function dataOf(job: Job, test: TestKind, stage: Stage, units: ShownUnits): PictureData | undefined {
  switch (test) {
    case 'compression':
      return compression(job, stage, units)
    case 'balance':
      return balance(job, stage)
    case 'leak-down':
      return leakDown(job, stage)
    default:
      return undefined
  }
}

function compression(job: Job, stage: Stage, { pressure }: ShownUnits): PictureData {
  const { values, limits } = compressionBars(job, stage)
  const shown = (psi: number) => toPressure({ value: psi, unit: 'psi' }, pressure)
  return {
    title: 'Compression',
    unit: pressure,
    digits: pressureDigits[pressure],
    rows: values.flatMap(({ cylinder, dry, wet, firstPuff, plusMinus }) =>
      dry === undefined
        ? []
        : [
            {
              cylinder,
              value: shown(dry),
              plusMinus: shown(plusMinus),
              ...(firstPuff === undefined ? {} : { firstPuff: shown(firstPuff) }),
              ...(wet === undefined ? {} : { wet: shown(wet) }),
            },
          ],
    ),
    limits: limits.map(({ at, label }) => ({ at: shown(at), label })),
  }
}

function balance(job: Job, stage: Stage): PictureData {
  return {
    title: 'Drop when cut out, drift removed',
    unit: 'rpm',
    digits: 0,
    rows: balanceBars(job, stage).values.map(({ cylinder, drop, plusMinus, limit }) => ({
      cylinder,
      value: drop,
      plusMinus,
      ...(limit === undefined ? {} : { limit }),
    })),
    limits: [],
    limitTitle: 'Half of the others',
  }
}

function leakDown(job: Job, stage: Stage): PictureData {
  const typed = job.circumstances.specification?.leakDownMaximum
  const set = ruleSet('leakDown', job)
  const lines: (PictureData['limits'][number] | false)[] = [
    { at: typed ?? set.maximumPercent, label: typed === undefined ? 'at most' : 'specified most' },
    typed === undefined && set.normalPercent !== undefined && { at: set.normalPercent, label: 'normal' },
  ]
  return {
    title: 'Lost air',
    unit: '%',
    digits: 0,
    rows: leakDownValues(job, stage).flatMap(({ cylinder, percent, plusMinus }) =>
      percent === undefined ? [] : [{ cylinder, value: percent, plusMinus }],
    ),
    limits: lines.flatMap(one => one || []),
  }
}

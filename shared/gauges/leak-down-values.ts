// What the leak-down pulls of one stage come to: one percentage a cylinder, with the tester that it belongs to.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toLength } from '../units/convert.ts'
import { atmosphereOf } from './atmosphere.ts'
import { readingError } from './calling.ts'
import { inPsi } from './compression-values.ts'
import { holeMillimetres } from './leak-down-hole.ts'
import { type EscapePath, escapePathsInOrder } from './leak-down-paths.ts'
import { median, rangeOf, tidy } from './middle.ts'
import { pressureBounds } from './uncertainty.ts'
import { byCylinder } from './verdict.ts'

export type LeakDownValue = {
  cylinder: number
  /** Middle of what is lost, percent of what goes in. Absent when no pull can be read as one. */
  percent?: number
  /** Reading error of dial or gauges, or half the range of the pulls where that is more, points. */
  plusMinus: number
  pulls: number
  /** More held than goes in, or nothing in: misread. */
  misread: number
  /** Read on two gauges (aviation form) at least once. */
  twoGauges: boolean
  escapes: EscapePath[]
  towards: number[]
  /** Some pull says that the engine was cold. */
  cold: boolean
  /** Tester, orifice and pressure; equal for cylinders that may be compared. */
  testers: string[]
  /** Air pressure in, psi, where written down. */
  pressures: number[]
  /** The leak as a hole, mm: middle of the pulls whose orifice and pressure are known. */
  hole?: number
}

type Read = { percent: number; plusMinus: number }

/** (in - held) / in; null for a pair that cannot be. */
export function lossOf(job: Pick<Job, 'instruments'>, pull: PullOf<'leak-down'>): Read | null {
  const { entry, instrument } = pull
  if (entry.form === 'percent') return { percent: entry.percent, plusMinus: percentError(job, instrument) }
  const supply = inPsi(entry.supply)
  const held = inPsi(entry.held)
  if (supply <= 0 || held < 0 || held > supply) return null
  const named = job.instruments?.some(one => one.id === instrument && one.division !== undefined)
  const read = named ? pressureBounds(job, instrument).read : readingError.leakPsi
  return {
    percent: tidy((100 * (supply - held)) / supply),
    plusMinus: tidy(100 * Math.hypot(read / supply, (held * read) / supply ** 2)),
  }
}

function percentError({ instruments }: Pick<Job, 'instruments'>, id: string | undefined): number {
  const named = instruments?.find(one => one.id === id)
  return named?.division !== undefined && named.unit === '%' ? named.division / 2 : readingError.leakPercent
}

/** One value a cylinder that has valid pulls, by cylinder number. */
export function leakDownValues(job: Job, stage: Stage): LeakDownValue[] {
  const pulls = validPulls(job, 'leak-down', stage)
  return [...new Set(pulls.map(pull => pull.cylinder))]
    .map(cylinder =>
      valueOf(
        job,
        cylinder,
        pulls.filter(pull => pull.cylinder === cylinder),
      ),
    )
    .toSorted(byCylinder)
}

function valueOf(job: Job, cylinder: number, pulls: readonly PullOf<'leak-down'>[]): LeakDownValue {
  const reads = pulls.flatMap(pull => lossOf(job, pull) ?? [])
  const percents = reads.map(one => one.percent)
  const holes = pulls.flatMap(pull => holeOf(job, pull) ?? [])
  const escapes = new Set(pulls.flatMap(pull => pull.entry.escapes ?? []))
  return {
    cylinder,
    ...(percents.length > 0 ? { percent: tidy(median(percents)) } : {}),
    plusMinus: tidy(Math.max(0, rangeOf(percents) / 2, ...reads.map(one => one.plusMinus))),
    pulls: pulls.length,
    misread: pulls.length - reads.length,
    twoGauges: pulls.some(pull => pull.entry.form === 'differential'),
    escapes: escapePathsInOrder.filter(path => escapes.has(path)),
    towards: [
      ...new Set(pulls.flatMap(({ entry }) => (entry.towards === undefined ? [] : [entry.towards]))),
    ].toSorted((a, b) => a - b),
    cold: pulls.some(pull => pull.entry.engine === 'cold'),
    testers: [...new Set(pulls.map(testerOf))].toSorted(),
    pressures: pulls.flatMap(pull => pressureIn(pull) ?? []).toSorted((a, b) => a - b),
    ...(holes.length > 0 ? { hole: tidy(median(holes)) } : {}),
  }
}

const testerOf = ({ instrument = '', entry }: PullOf<'leak-down'>): string =>
  `${instrument} ${entry.orifice ? toLength(entry.orifice, 'mm').toFixed(2) : ''}`.trim()

function pressureIn({ entry }: PullOf<'leak-down'>): number | undefined {
  const quantity = entry.form === 'percent' ? entry.regulated : entry.supply
  return quantity && inPsi(quantity)
}

/** Needs the orifice, from the pull or its tester, and the pressure in. */
function holeOf(job: Job, pull: PullOf<'leak-down'>): number | null {
  const { entry, instrument } = pull
  const orifice = entry.orifice ?? job.instruments?.find(one => one.id === instrument)?.orifice
  const supply = pressureIn(pull)
  const loss = lossOf(job, pull)
  if (orifice === undefined || supply === undefined || loss === null) return null
  const held = supply * (1 - loss.percent / 100)
  return holeMillimetres(toLength(orifice, 'mm'), supply, held, atmosphereOf(job.circumstances))
}

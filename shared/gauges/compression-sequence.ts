// What slips while one cylinder after another is cranked: battery, cranking speed and with them the pressures.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { withUnit } from '../units/format.ts'
import { readingError } from './calling.ts'
import { inPsi } from './compression-values.ts'
import { median, tidy } from './middle.ts'
import { fallOf } from './rank-trend.ts'
import { inWords, pressureShown, round, type ShownUnits } from './shown.ts'
import { sources } from './sources.ts'
import { pressureBounds } from './uncertainty.ts'
import type { GaugeVerdict } from './verdict.ts'

/** Above this chance the order says nothing; below it the fall must still be more than reading error. */
const chanceTaken = 0.05

type Watched = {
  what: string
  unit: string
  read: (entry: PullOf<'compression'>['entry']) => number | undefined
  error: number
  show: (value: number) => { value: number; unit: string }
}

/** At most one verdict each on battery, cranking speed and pressure; the order is that of the times of entry. */
export function fallsInSequence(job: Job, stage: Stage, units: ShownUnits): GaugeVerdict[] {
  const dry = validPulls(job, 'compression', stage).filter(pull => pull.entry.wet !== true)
  const testers = new Set(dry.flatMap(pull => pull.instrument ?? []))
  const errors = dry.map(pull => pressureBounds(job, pull.instrument).read)
  const plain = (unit: string) => (value: number) => ({ value: round(value, 2), unit })
  const watched: (Watched | false)[] = [
    {
      what: 'battery voltage',
      unit: 'V',
      read: entry => entry.batteryVolts,
      error: readingError.volts,
      show: plain('V'),
    },
    {
      what: 'cranking speed',
      unit: 'rpm',
      read: entry => entry.crankingRpm,
      error: readingError.rpm,
      show: plain('rpm'),
    },
    testers.size < 2 && {
      what: 'pressure',
      unit: units.pressure,
      read: entry => inPsi(entry.final),
      error: Math.max(readingError.psi, ...errors),
      show: value => pressureShown(value, units),
    },
  ]
  return watched.flatMap(one => (one ? fallIn(dry, one, stage) : []))
}

function fallIn(dry: readonly PullOf<'compression'>[], watched: Watched, stage: Stage): GaugeVerdict[] {
  const points = dry.flatMap(({ at, entry, cylinder }) => {
    const value = watched.read(entry)
    return value === undefined ? [] : [{ at: Date.parse(at), value, cylinder }]
  })
  const trend = fallOf(points)
  if (trend === null) return []
  const middleTime = median(points.map(one => one.at))
  const early = points.filter(one => one.at < middleTime)
  const late = points.filter(one => one.at > middleTime)
  if (early.length === 0 || late.length === 0) return []
  const fall = tidy(median(early.map(one => one.value)) - median(late.map(one => one.value)))
  const plusMinus = tidy(Math.SQRT2 * watched.error)
  if (trend.chance > chanceTaken || fall <= plusMinus) return []
  const cylinders = [...new Set(late.map(one => one.cylinder))].toSorted((a, b) => a - b)
  const shown = watched.show(fall)
  return [
    {
      test: 'compression',
      rule: `${watched.what} falls`,
      stage,
      ...shown,
      plusMinus: watched.show(plusMinus).value,
      verdict: 'watch',
      limit: 'battery, speed and pressures stay even from the first cylinder to the last',
      why: `${withUnit(String(shown.value), shown.unit)} lower in the later half of ${trend.count} pulls; by chance such an order comes in ${chanceWords(trend.chance)}. Cylinder ${inWords(cylinders)}, pulled later, may read low for that alone: charge the battery and pull the first and the last again.`,
      source: sources.sequence,
      about: 'reading',
    },
  ]
}

const chanceWords = (chance: number): string =>
  chance < 0.001 ? 'less than 1 of 1000' : `about 1 of ${Math.round(1 / chance)}`

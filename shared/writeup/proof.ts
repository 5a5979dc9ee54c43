// The proof after the repair: what had failed, repeated, before beside after. Without a repeat it is unverified.
import { gauges, judgeAll } from '../gauges/gauges.ts'
import { inWords, type ShownUnits, tradeUnits } from '../gauges/shown.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import { plugReadings } from '../diagnosis/plug-evidence.ts'
import { beforeAfter, type BeforeAfter } from './before-after.ts'
import type { WriteUpTable } from './write-up.ts'

/** Sentences; the first says proven, partly proven, not proven or unverified. Empty without a repair. */
export function proofOf(job: Job, units: ShownUnits = tradeUnits): string[] {
  if (!job.repair) return []
  const repeated = gauges.filter(({ test }) => validPulls(job, test, 'after repair').length > 0)
  const readAgain = plugReadings(job, 'after repair').length > 0
  if (repeated.length === 0 && !readAgain) return ['Unverified: no test was repeated after the repair.']
  const rows = beforeAfter(job, units)
  const worse = newlyOutside(job, units)
  if (rows.length === 0 && worse.length === 0)
    return [
      `Nothing had failed before. Repeated after the work and in order: ${inWords([...repeated.map(one => one.title.toLowerCase()), ...(readAgain ? ['plugs'] : [])])}.`,
    ]
  return [
    openingOf(rows, worse),
    ...rows.map(rowText),
    ...worse.map(text => `Outside after the work: ${text}.`),
  ]
}

function openingOf(rows: readonly BeforeAfter[], worse: readonly string[]): string {
  const met = rows.filter(row => row.standing === 'met')
  if (worse.length > 0 || rows.some(row => row.standing === 'not met'))
    return 'Not proven: something is still not in order after the work.'
  if (met.length === 0) return 'Unverified: what had failed was not repeated, or does not tell yet.'
  return met.length === rows.length
    ? 'Proven: everything that had failed was tested again and is in order.'
    : 'Partly proven: what was tested again is in order, but not everything was.'
}

const rowText = ({ what, where, before, after }: BeforeAfter): string =>
  `${capital(what)}, ${where}: ${before} as found, after the work ${after}.`

/** What is outside after the work and was not before. */
function newlyOutside(job: Job, units: ShownUnits): string[] {
  const key = (one: { test: string; rule: string; cylinder?: number }) =>
    `${one.test}, ${one.rule}, ${one.cylinder === undefined ? 'engine' : `cylinder ${one.cylinder}`}`
  const before = new Set(
    judgeAll(job, 'as found', units)
      .filter(one => one.verdict === 'outside' || one.verdict === 'watch')
      .map(key),
  )
  return judgeAll(job, 'after repair', units)
    .filter(one => one.verdict === 'outside' && !before.has(key(one)))
    .map(key)
}

/** Before and after side by side; undefined without a repair or when nothing had failed. */
export function proofTable(job: Job, units: ShownUnits): WriteUpTable | undefined {
  const rows = job.repair ? beforeAfter(job, units) : []
  if (rows.length === 0) return undefined
  return {
    title: 'Before and after the work',
    columns: ['Test', 'Where', 'As found', 'After the work', 'Difference'],
    rows: rows.map(row => [row.what, row.where, row.before, row.after, row.difference ?? '']),
    notes: [],
  }
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)

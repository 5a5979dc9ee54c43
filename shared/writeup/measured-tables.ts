// What was measured at one stage, as tables in the person's units.
import type { UnitChoice } from '../contract/settings-schema.ts'
import { judgeBaseline } from '../gauges/balance-readings.ts'
import { balanceValues } from '../gauges/balance-values.ts'
import { compressionValues } from '../gauges/compression-values.ts'
import { judgeBalance } from '../gauges/balance.ts'
import { judgeCompression } from '../gauges/compression.ts'
import { pressureShown, pressureWords, rpmWords, vacuumWords } from '../gauges/shown.ts'
import { judgeVacuum } from '../gauges/vacuum.ts'
import { valueWords } from '../diagnosis/gauge-evidence.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { formatPressure, formatVacuum } from '../units/format.ts'
import { otherTables } from './other-tables.ts'
import { cylinderWords, limitNotes, none, wetNotes } from './verdict-words.ts'
import { voidedNotes } from './voided-notes.ts'
import type { WriteUpTable } from './write-up.ts'

/** A table for each test that was done; none for one that was not. */
export function measuredTables(job: Job, stage: Stage, units: UnitChoice): WriteUpTable[] {
  return [
    compressionTable(job, stage, units),
    balanceTable(job, stage, units),
    vacuumTable(job, stage, units),
    ...otherTables(job, stage, units),
  ].filter(table => table !== undefined)
}

/** "118 ± 2.5 psi". */
const finalWords = (psi: number, plusMinus: number, units: UnitChoice): string =>
  `${pressureShown(psi, units).value}\u00a0\u00b1\u00a0${pressureShown(plusMinus, units).value}\u00a0${units.pressure}`

const finals = (pulls: readonly PullOf<'compression'>[], wet: boolean, units: UnitChoice): string =>
  pulls
    .filter(pull => (pull.entry.wet === true) === wet)
    .map(pull => formatPressure(pull.entry.final, units.pressure))
    .join(', ')

function compressionTable(job: Job, stage: Stage, units: UnitChoice): WriteUpTable | undefined {
  const values = compressionValues(job, stage)
  if (values.length === 0) return undefined
  const pulls = validPulls(job, 'compression', stage)
  const verdicts = judgeCompression(job, stage, units)
  const words = (psi: number | undefined) => (psi === undefined ? none : pressureWords(psi, units))
  return {
    title: `Compression, ${stage}`,
    columns: ['Cylinder', 'Pulls', 'First puff', 'Final', 'Wet', 'Verdict'],
    rows: values.map(value => {
      const mine = pulls.filter(pull => pull.cylinder === value.cylinder)
      return [
        String(value.cylinder),
        finals(mine, false, units) || none,
        words(value.firstPuff),
        value.dry === undefined ? none : finalWords(value.dry, value.plusMinus, units),
        finals(mine, true, units) || none,
        cylinderWords(verdicts, value.cylinder),
      ]
    }),
    notes: [
      'Final and first puff: middle of the valid dry pulls; \u00b1 is half a gauge division or half the range of the pulls, whichever is more, with the accuracy class of the tester where one is stated. Cylinders are compared in the same air, so nothing is corrected for altitude.',
      ...limitNotes(verdicts),
      ...wetNotes(verdicts),
      ...voidedNotes(job, 'compression', stage),
    ],
  }
}

function balanceTable(job: Job, stage: Stage, units: UnitChoice): WriteUpTable | undefined {
  const values = balanceValues(job, stage)
  if (values.length === 0) return undefined
  const verdicts = judgeBalance(job, stage, units)
  return {
    title: `Cylinder balance, ${stage}`,
    columns: ['Cylinder', 'Cut-outs', 'Speed drop', 'Vacuum drop', 'Verdict'],
    rows: values.map(value => [
      String(value.cylinder),
      String(value.cuts),
      `${Math.round(value.drop)}\u00a0\u00b1\u00a0${rpmWords(value.plusMinus)}`,
      value.vacuumDrop === undefined ? none : vacuumWords(value.vacuumDrop, units),
      cylinderWords(verdicts, value.cylinder),
    ]),
    notes: [
      ...judgeBaseline(job, stage, units)
        .filter(one => one.verdict !== 'within')
        .map(one => `${one.rule}: ${one.why} [${one.source}]`),
      ...limitNotes(verdicts),
      ...voidedNotes(job, 'balance', stage),
    ],
  }
}

function vacuumTable(job: Job, stage: Stage, units: UnitChoice): WriteUpTable | undefined {
  const pulls = validPulls(job, 'vacuum', stage)
  if (pulls.length === 0) return undefined
  return {
    title: `Manifold vacuum, ${stage}`,
    columns: ['State', 'Reading', 'Rebound', 'Needle'],
    rows: pulls.map(({ entry }) => [
      entry.phase,
      formatVacuum(entry.reading, units.vacuum),
      entry.rebound ? formatVacuum(entry.rebound, units.vacuum) : none,
      entry.needle ?? none,
    ]),
    notes: [
      ...judgeVacuum(job, stage, units).map(
        one => `${one.rule}, ${valueWords(one)}: ${one.verdict} (${one.limit}). ${one.why} [${one.source}]`,
      ),
      ...voidedNotes(job, 'vacuum', stage),
    ],
  }
}

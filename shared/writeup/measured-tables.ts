// What was measured, as tables in the person's units: compression, balance and vacuum of one stage.
import type { UnitChoice } from '../contract/settings-schema.ts'
import { balanceValues } from '../gauges/balance-values.ts'
import { compressionValues } from '../gauges/compression-values.ts'
import { gaugeOf } from '../gauges/gauges.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { formatPressure, formatVacuum } from '../units/format.ts'
import type { WriteUpTable } from './write-up.ts'

const none = '\u2013'

export function measuredTables(job: Job, stage: Stage, units: UnitChoice): WriteUpTable[] {
  return [
    compressionTable(job, stage, units),
    balanceTable(job, stage, units),
    vacuumTable(job, stage, units),
  ].filter(table => table !== undefined)
}

const verdictsOf = (job: Job, stage: Stage, test: TestKind, units: UnitChoice): GaugeVerdict[] =>
  gaugeOf(test)?.judge(job, stage, units) ?? []

/** "share of highest 66 %: outside" for every rule that is not simply met. */
const wordsFor = (verdicts: readonly GaugeVerdict[], cylinder: number): string => {
  const mine = verdicts.filter(one => one.cylinder === cylinder && one.verdict !== 'noted')
  const notable = mine.filter(one => one.verdict !== 'within')
  if (mine.length === 0) return none
  return notable.length === 0
    ? 'within limits'
    : notable.map(one => `${one.rule} ${one.value}\u00a0${one.unit}: ${one.verdict}`).join('; ')
}

const limitsOf = (verdicts: readonly GaugeVerdict[]): string[] => [
  ...new Set(
    verdicts.filter(one => one.verdict !== 'noted').map(one => `${one.rule}: ${one.limit} (${one.source}).`),
  ),
]

function compressionTable(job: Job, stage: Stage, units: UnitChoice): WriteUpTable | undefined {
  const values = compressionValues(job, stage)
  if (values.length === 0) return undefined
  const psi = (value: number | undefined) =>
    value === undefined ? none : formatPressure({ value, unit: 'psi' }, units.pressure)
  const verdicts = verdictsOf(job, stage, 'compression', units)
  return {
    title: `Compression, ${stage}`,
    columns: ['Cylinder', 'Pulls', 'First puff', 'Final', 'Wet', 'Verdict'],
    rows: values.map(value => [
      String(value.cylinder),
      String(value.pulls),
      psi(value.firstPuff),
      value.dry === undefined ? none : `${psi(value.dry)} \u00b1 ${psi(value.plusMinus)}`,
      psi(value.wet),
      wordsFor(verdicts, value.cylinder),
    ]),
    notes: [
      'Middle of the valid pulls; \u00b1 is half a gauge division or half the range of the pulls, whichever is more.',
      ...limitsOf(verdicts),
      ...verdicts
        .filter(one => one.cylinder === undefined)
        .map(one => `${one.rule} ${one.value}\u00a0${one.unit}: ${one.verdict}. ${one.why}`),
    ],
  }
}

function balanceTable(job: Job, stage: Stage, units: UnitChoice): WriteUpTable | undefined {
  const values = balanceValues(job, stage)
  if (values.length === 0) return undefined
  const verdicts = verdictsOf(job, stage, 'balance', units)
  return {
    title: `Cylinder balance, ${stage}`,
    columns: ['Cylinder', 'Cuts', 'Speed drop', 'Vacuum drop', 'Verdict'],
    rows: values.map(value => [
      String(value.cylinder),
      String(value.cuts),
      `${Math.round(value.drop)}\u00a0rpm`,
      value.vacuumDrop === undefined
        ? none
        : formatVacuum({ value: value.vacuumDrop, unit: 'inHg' }, units.vacuum),
      wordsFor(verdicts, value.cylinder),
    ]),
    notes: limitsOf(verdicts),
  }
}

function vacuumTable(job: Job, stage: Stage, units: UnitChoice): WriteUpTable | undefined {
  const pulls = validPulls(job, 'vacuum', stage)
  if (pulls.length === 0) return undefined
  const verdicts = verdictsOf(job, stage, 'vacuum', units)
  return {
    title: `Manifold vacuum, ${stage}`,
    columns: ['State', 'Reading', 'Rebound', 'Needle'],
    rows: pulls.map(({ entry }) => [
      entry.phase,
      formatVacuum(entry.reading, units.vacuum),
      entry.rebound ? formatVacuum(entry.rebound, units.vacuum) : none,
      entry.needle ?? none,
    ]),
    notes: verdicts.map(
      one => `${one.rule} ${one.value}\u00a0${one.unit}: ${one.verdict} (${one.limit}). ${one.why}`,
    ),
  }
}

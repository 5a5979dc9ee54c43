// All readings of a job as a table: a row each number that was read, the voided and the corrected marked.
import { asCorrected } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import { csvText } from './readings-csv-cell.ts'

const header = [
  'Reading',
  'Stage',
  'Test',
  'Cylinder',
  'Field',
  'Value that counts (in the unit beside)',
  'Unit',
  'Value as entered (in the unit beside)',
  'Unit as entered',
  'Corrected because',
  'Voided because',
  'Tester',
  'Time (ISO 8601)',
  'By',
  'Note',
]

type Part = { field: string; value: string; unit: string }

/** Units that a field's number is in where the entry does not carry one. */
const unitOf: Readonly<Record<string, string>> = {
  rpmBefore: 'rpm',
  rpmAfter: 'rpm',
  rpmRestored: 'rpm',
  rpm: 'rpm',
  crankingRpm: 'rpm',
  percent: '%',
  shortTerm: '%',
  longTerm: '%',
  plusMinus: '%',
  ohms: 'ohm',
  kilovolts: 'kV',
  minutes: 'min',
  seconds: 's',
  oilMillilitres: 'ml',
  batteryVolts: 'V',
}

/**
 * CSV with a header, decimal points and a row for every field of every pull, in the order they were made. Text that a
 * spreadsheet would take for a formula is made harmless.
 */
export function readingsCsv(job: Job): string {
  const testers = new Map(job.instruments?.map(one => [one.id, one.name]))
  return csvText([
    header,
    ...job.pulls.flatMap((pull, at) => {
      const entered = new Map(partsOf(pull).map(one => [one.field, one]))
      const last = pull.corrections?.at(-1)
      const because = last && last.how.kind !== 'as entered' ? last.reason : ''
      return partsOf(asCorrected(pull)).map(({ field, value, unit }) => {
        const first = entered.get(field)
        return [
          String(at + 1),
          pull.stage,
          pull.test,
          'cylinder' in pull ? String(pull.cylinder) : '',
          field,
          value,
          unit,
          first?.value ?? '',
          first?.unit ?? '',
          because,
          pull.voided?.reason ?? '',
          pull.instrument === undefined ? '' : (testers.get(pull.instrument) ?? ''),
          pull.at,
          pull.by ?? '',
          pull.note ?? '',
        ]
      })
    }),
  ])
}

/** "firstPuff" is read "first puff"; a part of a part is named after both. */
const spelled = (name: string): string => name.replace(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`)

function partsOf(pull: Pull): Part[] {
  const parts: Part[] = []
  const walk = (name: string, key: string, value: unknown): void => {
    if (value === undefined || value === null) return
    if (typeof value !== 'object')
      parts.push({
        field: name,
        value: written(value),
        unit: typeof value === 'number' ? (unitOf[key] ?? '') : '',
      })
    else if ('value' in value && 'unit' in value && typeof value.value === 'number')
      parts.push({ field: name, value: written(value.value), unit: String(value.unit) })
    else
      for (const [inner, part] of Object.entries(value))
        walk(
          /^\d+$/.test(inner) ? `${name} ${Number(inner) + 1}` : `${name} ${spelled(inner)}`.trim(),
          inner,
          part,
        )
  }
  walk('', '', pull.entry)
  return parts
}

function written(value: unknown): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return typeof value === 'number' || typeof value === 'string' ? String(value) : ''
}

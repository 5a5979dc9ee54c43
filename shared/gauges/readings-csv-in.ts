// A table of readings becomes readings of one test: columns and units guessed, every row read or refused with its reason.
import { parseNumber } from '../units/parse.ts'
import {
  type CsvField,
  type CsvReading,
  type CsvTest,
  type CsvUnits,
  csvFields,
  csvReading,
} from './readings-csv-fields.ts'

export type CsvRow = { line: number; cells: readonly string[] }

/** Which column holds what; columns count from 0. */
export type CsvMapping = {
  /** Rows before this one are headings; counts from 0. */
  firstRow: number
  cylinder: number | null
  /** By name of the field; null or missing when no column holds it. */
  fields: Readonly<Record<string, number | null>>
  units: CsvUnits
}

export type WrongRow = { line: number; what: string; hint: string }
export type CsvOutcome = { readings: { line: number; reading: CsvReading }[]; wrong: WrongRow[] }

const cylinderWords = ['cylinder', 'cyl', 'cyl.', 'no', 'no.', '#', 'hole']
const plain = (text: string): string => text.toLowerCase().replaceAll(/\s+/g, ' ').trim()
/** A heading without the unit that may stand in brackets or after a comma. */
const bare = (text: string): string => plain(text.replace(/[([].*|,.*/, ''))

const isNumeric = (cell: string): boolean => parseNumber(cell) !== null

/** The first row whose filled cells are mostly numbers. */
function firstOfNumbers(rows: readonly CsvRow[]): number {
  const at = rows.findIndex(({ cells }) => {
    const filled = cells.filter(cell => cell !== '')
    return filled.length > 0 && filled.filter(isNumeric).length * 2 > filled.length
  })
  return at === -1 ? Math.min(1, rows.length) : at
}

const pressureUnit = (text: string): CsvUnits['pressure'] | undefined =>
  /\bkpa\b/i.test(text) ? 'kPa' : /\bbar\b/i.test(text) ? 'bar' : /\bpsi\b/i.test(text) ? 'psi' : undefined
const vacuumUnit = (text: string): CsvUnits['vacuum'] | undefined =>
  /\bkpa\b/i.test(text) ? 'kPa' : /\bin ?hg\b/i.test(text) ? 'inHg' : undefined

/** Best guess from the headings; `units` are those to take where the table names none. */
export function guessCsvMapping(rows: readonly CsvRow[], test: CsvTest, units: CsvUnits): CsvMapping {
  const firstRow = firstOfNumbers(rows)
  const headings = rows.slice(0, firstRow)
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length))
  const columns = Array.from({ length: width }, (_, at) => at)
  const headingsOf = (at: number): string[] => headings.map(({ cells }) => cells[at] ?? '').filter(Boolean)
  const named = (at: number, words: readonly string[]) =>
    headingsOf(at).some(one => words.includes(bare(one)))
  const taken = new Set<number>()
  const take = (words: readonly string[]): number | null => {
    const at = columns.find(column => !taken.has(column) && named(column, words)) ?? null
    if (at !== null) taken.add(at)
    return at
  }
  const cylinder = take(cylinderWords)
  const byName = csvFields[test].map(
    field => [field, take([plain(field.label), plain(field.name), ...field.words])] as const,
  )
  // A table without headings: cylinder first, then the fields in order.
  const rest = columns.filter(at => !taken.has(at))
  const bareTable = headings.length === 0
  const cylinderAt = cylinder ?? (bareTable ? (rest.shift() ?? null) : null)
  const fields = Object.fromEntries(
    byName.map(([{ name }, at]) => [name, at ?? (bareTable ? (rest.shift() ?? null) : null)]),
  )
  const unitText = (kind: CsvField['kind']): string =>
    byName.flatMap(([field, at]) => (field.kind === kind && at !== null ? headingsOf(at) : [])).join(' ')
  return {
    firstRow,
    cylinder: cylinderAt,
    fields,
    units: {
      pressure: pressureUnit(unitText('pressure')) ?? units.pressure,
      vacuum: vacuumUnit(unitText('vacuum')) ?? units.vacuum,
    },
  }
}

type Cell = { ok: true; value: number | boolean } | { ok: false; what: string; hint: string }

function readCell(field: CsvField, text: string): Cell {
  if (field.kind === 'yes or no') {
    if (/^(y|yes|x|1|true|wet)$/i.test(text)) return { ok: true, value: true }
    if (/^(n|no|0|false|dry|-)$/i.test(text)) return { ok: true, value: false }
    return { ok: false, what: `${field.label} is “${text}”.`, hint: 'Write yes or no.' }
  }
  const value = parseNumber(text)
  if (value === null)
    return {
      ok: false,
      what: `${field.label} is “${text}”, which is no number.`,
      hint: 'Write a plain number.',
    }
  const { least = field.kind === 'number' ? -Infinity : 0, most = Infinity } = field
  if (value < least || value > most || (field.whole && !Number.isInteger(value)))
    return {
      ok: false,
      what: `${field.label} is ${text}.`,
      hint: `It must be ${field.whole ? 'a whole number ' : ''}from ${least}${most === Infinity ? ' up' : ` to ${most}`}.`,
    }
  return { ok: true, value }
}

/** Every row from the first one on: a reading, or a line of what is wrong with it. A decimal comma is read as well. */
export function readCsvRows(
  rows: readonly CsvRow[],
  test: CsvTest,
  mapping: CsvMapping,
  cylinders: readonly number[],
): CsvOutcome {
  const outcome: CsvOutcome = { readings: [], wrong: [] }
  const refuse = (line: number, what: string, hint: string) => outcome.wrong.push({ line, what, hint })
  for (const { line, cells } of rows.slice(mapping.firstRow)) {
    const text = mapping.cylinder === null ? '' : (cells[mapping.cylinder] ?? '')
    const cylinder = parseNumber(text.replace(/^(cylinder|cyl\.?|no\.?|#)\s*/i, ''))
    if (cylinder === null || !cylinders.includes(cylinder)) {
      refuse(
        line,
        text === '' ? 'No cylinder is named.' : `The engine has no cylinder “${text}”.`,
        `Name one of ${cylinders.join(', ')}.`,
      )
      continue
    }
    const values = new Map<string, number | boolean>()
    let wrong: Cell | undefined
    for (const field of csvFields[test]) {
      const at = mapping.fields[field.name] ?? null
      const content = at === null ? '' : (cells[at] ?? '')
      if (content === '') continue
      const cell = readCell(field, content)
      if (cell.ok) values.set(field.name, cell.value)
      else wrong ??= cell
    }
    const reading = csvReading(test, cylinder, values, mapping.units)
    if (wrong && !wrong.ok) refuse(line, wrong.what, wrong.hint)
    else if (reading === null)
      refuse(line, 'A value that this test needs is missing.', 'Fill it in, or choose its column.')
    else outcome.readings.push({ line, reading })
  }
  return outcome
}

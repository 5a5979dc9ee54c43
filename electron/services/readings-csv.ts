// Cuts a CSV file of readings into cells: small files only, any usual separator, quoted cells, UTF-8 or Windows text.
import { readFile, stat } from 'node:fs/promises'
import { parse } from 'csv-parse/sync'
import { z } from 'zod'
import {
  type CsvSeparator,
  type CsvTable,
  csvSeparators,
} from '../../shared/contract/readings-csv-contract.ts'
import { FaultError } from './fault.ts'
import type { WaitingFiles } from './waiting-files.ts'

const mostBytes = 2 * 1024 * 1024
const mostRows = 5000
const mostColumns = 64
const mostCell = 400

const characters: Readonly<Record<CsvSeparator, string>> = { comma: ',', semicolon: ';', tab: '\t' }

const infoSchema = z.array(z.object({ record: z.array(z.string()), info: z.object({ lines: z.number() }) }))

/** Windows spreadsheets still write their own code page; what is no UTF-8 is read as that. */
function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

/** The separator that most of the first lines hold, most often. */
function guessed(text: string): CsvSeparator {
  const lines = text.split(/\r?\n/, 20).filter(line => line.trim() !== '')
  const count = (separator: CsvSeparator) =>
    lines.reduce((sum, line) => sum + Math.min(line.split(characters[separator]).length - 1, 20), 0)
  // A comma may be a decimal sign: it gives way to the others.
  if (count('tab') > 0) return 'tab'
  return count('semicolon') > 0 ? 'semicolon' : 'comma'
}

const refusal = (what: string, where: string, hint: string) =>
  new FaultError('BAD_INPUT', { what, where, hint })

/** Throws NOT_FOUND for an unknown ref, BAD_INPUT for what is no such table. */
export async function readReadingsCsv(
  files: WaitingFiles,
  ref: string,
  separator?: CsvSeparator,
): Promise<CsvTable> {
  const { path, name } = files.peek(ref)
  if ((await stat(path)).size > mostBytes)
    throw refusal(
      'A file of readings holds at most 2 MB.',
      name,
      'Take a recording of current or speed to its own test; keep only the rows of readings here.',
    )
  const text = textOf(await readFile(path))
  if (text.includes('\u0000'))
    throw refusal('This is no text file.', name, 'Save the table as CSV and choose that file.')
  const chosen = separator ?? guessed(text)
  let parsed: unknown
  try {
    parsed = parse(text, {
      bom: true,
      delimiter: characters[chosen],
      info: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
      to: mostRows + 1,
    })
  } catch (error) {
    throw refusal(
      `The table cannot be read: ${error instanceof Error ? error.message : 'unknown reason'}.`,
      name,
      `Try another separator (${csvSeparators.join(', ')}), or mend that line.`,
    )
  }
  const rows = infoSchema
    .parse(parsed)
    .map(({ record, info }) => ({
      line: info.lines,
      cells: record.slice(0, mostColumns).map(cell => cell.trim().slice(0, mostCell)),
    }))
    .filter(({ cells }) => cells.some(cell => cell !== ''))
  if (rows.length === 0) throw refusal('The file holds no rows.', name, 'Choose a table with readings.')
  if (rows.length > mostRows)
    throw refusal(
      `A file of readings holds at most ${mostRows} rows.`,
      name,
      'Split the table and import it part by part.',
    )
  return { fileName: name, separator: chosen, rows }
}

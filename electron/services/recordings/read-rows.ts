// Streams the rows of a recording past: columns picked by number, numbers read from the bytes, wrong rows counted and
// the first ones listed. No line becomes a string unless it is listed.
import type { RecordingMapping, WrongRow } from '../../../shared/contract/recordings-contract.ts'
import { fieldReader, wrong } from './number-bytes.ts'

export type RowColumns = Pick<
  RecordingMapping,
  'separator' | 'decimal' | 'firstLine' | 'timeColumn' | 'valueColumn' | 'syncColumn'
>

export type RowCounts = {
  rows: number
  lines: number
  wrongRows: number
  firstWrongRows: WrongRow[]
  /** Set when the file does not read as lines of text at all. */
  notText: string | null
}

export type RowReader = {
  /** Any part of the file, in order. */
  push: (bytes: Uint8Array) => void
  /** The last line, if it has no line end. */
  end: () => RowCounts
}

const separators = { comma: 44, semicolon: 59, tab: 9, space: 32 } as const
const [lineEnd, carriage, hash, percent, slash] = [10, 13, 35, 37, 47]
const longestLine = 64 * 1024
const listedRows = 20
const listedText = 120

/**
 * @param onRow time (NaN where there is no time column), value and sync (NaN where missing or not asked for)
 */
export function readRows(
  columns: RowColumns,
  onRow: (time: number, value: number, sync: number) => void,
): RowReader {
  const separator = separators[columns.separator]
  const decimal = columns.decimal === 'comma' ? 44 : 46
  const field = fieldReader(separator, decimal)
  const { firstLine, timeColumn = -1, valueColumn, syncColumn = -1 } = columns
  const lastColumn = Math.max(timeColumn, valueColumn, syncColumn)
  const squeezed = separator === separators.space
  const counts: RowCounts = { rows: 0, lines: 0, wrongRows: 0, firstWrongRows: [], notText: null }
  const text = new TextDecoder()
  let rest = new Uint8Array(0)

  const isWrong = (bytes: Uint8Array, from: number, to: number, why: string) => {
    counts.wrongRows += 1
    if (counts.firstWrongRows.length >= listedRows) return
    const shown = text.decode(bytes.subarray(from, Math.min(to, from + listedText)))
    counts.firstWrongRows.push({ line: counts.lines, text: shown, why })
  }

  const line = (bytes: Uint8Array, from: number, end: number) => {
    counts.lines += 1
    if (counts.lines < firstLine) return
    let to = end
    if (to > from && bytes[to - 1] === carriage) to -= 1
    if (to === from) return
    const first = bytes[from]
    // Comments: #, % or //.
    if (first === hash || first === percent || (first === slash && bytes[from + 1] === slash)) return
    let at = from
    if (squeezed) while (at < to && bytes[at] === separator) at += 1
    let time = Number.NaN
    let value = Number.NaN
    let sync = Number.NaN
    let column = 0
    for (;;) {
      let stop = at
      if (column === valueColumn) {
        value = field.read(bytes, at, to)
        stop = field.end
      } else if (column === timeColumn) {
        time = field.read(bytes, at, to)
        stop = field.end
      } else if (column === syncColumn) {
        sync = field.read(bytes, at, to)
        stop = field.end
      } else while (stop < to && bytes[stop] !== separator) stop += 1
      if (column === lastColumn || stop >= to) break
      column += 1
      at = stop + 1
      if (squeezed) while (at < to && bytes[at] === separator) at += 1
    }
    if (column < lastColumn) {
      isWrong(bytes, from, to, `only ${column + 1} of ${lastColumn + 1} columns`)
    } else if (time === wrong || (timeColumn >= 0 && time !== time)) {
      isWrong(bytes, from, to, `no number in column ${timeColumn + 1} (time)`)
    } else if (value === wrong) {
      isWrong(bytes, from, to, `no number in column ${valueColumn + 1}`)
    } else {
      counts.rows += 1
      onRow(time, value, sync === wrong ? Number.NaN : sync)
    }
  }

  return {
    push(bytes) {
      if (counts.notText !== null) return
      let from = 0
      if (rest.length > 0) {
        const end = bytes.indexOf(lineEnd)
        const part = bytes.subarray(0, end < 0 ? bytes.length : end)
        const whole = new Uint8Array(rest.length + part.length)
        whole.set(rest)
        whole.set(part, rest.length)
        if (end < 0) {
          rest = whole
          if (rest.length > longestLine) counts.notText = 'A line is longer than 64 KiB'
          return
        }
        line(whole, 0, whole.length)
        rest = new Uint8Array(0)
        from = end + 1
      }
      for (;;) {
        const end = bytes.indexOf(lineEnd, from)
        if (end < 0) break
        line(bytes, from, end)
        from = end + 1
      }
      // A copy: a Buffer's own slice would share the memory that the next read overwrites.
      if (from < bytes.length) rest = new Uint8Array(bytes.subarray(from))
      if (rest.length > longestLine) counts.notText = 'A line is longer than 64 KiB'
    },
    end() {
      if (rest.length > 0 && counts.notText === null) line(rest, 0, rest.length)
      rest = new Uint8Array(0)
      return counts
    },
  }
}

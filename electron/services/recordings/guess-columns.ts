// Guesses which column is time, which the current or the speed, and which the sync; the person decides.
import type {
  RecordingColumn,
  RecordingMapping,
  RecordingTestKind,
} from '../../../shared/contract/recordings-contract.ts'
import { isNumber, type Table } from './guess-table.ts'

const shownSamples = 6
const timeName = /^(t|x)$|time|zeit|temps|tiempo|second/i
const countName = /^(#|n|no|nr|i)\.?$|sample|index|count|tooth/i
const currentName = /amp|current|strom|courant|corriente|starter|clamp/i
const speedName = /rpm|speed|drehzahl|rev|1\/min|min-1/i
const intervalName = /interval|period|delta|dt$/i
const syncName = /sync|trig|cyl|cam|ign|ref/i

const unitIn = (name: string): string => /[([]\s*([^)\]]{1,8})\s*[)\]]\s*$/.exec(name)?.[1]?.trim() ?? ''

export function columnsOf(table: Table): RecordingColumn[] {
  const width = table.rows[0]?.length ?? 0
  return Array.from({ length: Math.min(64, width) }, (_, at) => {
    const samples = table.rows.slice(0, shownSamples).map(row => row[at] ?? '')
    const name = table.names[at] ?? ''
    return {
      name: name.slice(0, 80),
      unit: (table.units[at]?.replace(/^[([]|[)\]]$/g, '') ?? unitIn(name)).slice(0, 12),
      samples: samples.map(sample => sample.slice(0, 40)),
      isNumber: samples.some(sample => isNumber(sample, table.decimal)),
    }
  })
}

const asNumber = (field: string | undefined, decimal: Table['decimal']): number =>
  field === undefined || field === ''
    ? Number.NaN
    : Number(decimal === 'comma' ? field.replace(',', '.') : field)

const valuesOf = (table: Table, column: number): number[] =>
  table.rows.map(row => asNumber(row[column], table.decimal))

const steps = (values: number[]): number[] => values.slice(1).map((value, at) => value - (values[at] ?? 0))

const rises = (values: number[]): boolean => values.length > 2 && steps(values).every(step => step > 0)

const middle = (values: number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

function timeUnitOf(unit: string): RecordingMapping['timeUnit'] | null {
  if (/^(s|sec|secs|seconds?)$/i.test(unit)) return 's'
  if (/^(ms|msecs?|milliseconds?)$/i.test(unit)) return 'ms'
  return /^([uµμ]s|[uµμ]secs?|microseconds?)$/i.test(unit) ? 'us' : null
}

/** Between 200 and 200,000 samples a second the size of a step tells the unit but for one overlap. */
function timeUnitBySteps(step: number): RecordingMapping['timeUnit'] {
  if (step <= 0.0051) return 's'
  return step <= 5.1 ? 'ms' : 'us'
}

/** "sample interval: 10 us" or "sample rate 100 kHz" in the lines above. */
function rateAbove(above: readonly string[]): number | null {
  for (const line of above) {
    const found =
      /(rate|freq|interval|increment|spacing)[^\d+-]*([\d.]+(?:[eE][+-]?\d+)?)\s*([a-zµμ/]*)/i.exec(line)
    const value = Number(found?.[2])
    if (!found || !(value > 0)) continue
    const unit = found[3] ?? ''
    if (/^(rate|freq)/i.test(found[1] ?? '')) {
      return value * (/^k/i.test(unit) ? 1e3 : unit.startsWith('M') ? 1e6 : 1)
    }
    const seconds = { s: 1, ms: 1e-3, us: 1e-6 }[timeUnitOf(unit) ?? 's']
    return 1 / (value * seconds)
  }
  return null
}

type Guessed = { guess: RecordingMapping; doubts: string[] }

export function guessMapping(table: Table, columns: RecordingColumn[], test: RecordingTestKind): Guessed {
  const doubts: string[] = []
  const numeric = columns.flatMap((column, at) => (column.isNumber ? [at] : []))
  const named = (pattern: RegExp, but: number[] = []) =>
    numeric.find(at => !but.includes(at) && pattern.test(columns[at]?.name ?? ''))
  const isCount = (at: number) =>
    countName.test(columns[at]?.name ?? '') && steps(valuesOf(table, at)).every(step => step === 1)
  const withUnit = (pattern: RegExp, but: number[]) =>
    numeric.find(at => !but.includes(at) && pattern.test(columns[at]?.unit ?? ''))

  const first = numeric[0]
  const timeColumn =
    numeric.find(at => timeUnitOf(columns[at]?.unit ?? '') !== null && rises(valuesOf(table, at))) ??
    named(timeName) ??
    (numeric.length > 1 && first !== undefined && !isCount(first) && rises(valuesOf(table, first))
      ? first
      : undefined)
  const taken = [timeColumn ?? -1, ...numeric.filter(isCount)]
  const value = kindOf(test, columns, numeric, taken)
  const wanted = {
    current: currentName,
    rpm: speedName,
    'tooth interval': intervalName,
    'tooth time': timeName,
  }[value]
  const valueColumn =
    named(wanted, taken) ??
    withUnit(value === 'current' ? /^[mk]?A(mps?)?$/i : /^(rpm|1\/min|[uµμm]?s)$/i, taken) ??
    numeric.find(at => !taken.includes(at)) ??
    timeColumn ??
    0
  const syncColumn = named(syncName, [...taken, valueColumn])

  const unit = timeUnitOf(columns[timeColumn ?? valueColumn]?.unit ?? '')
  const step = timeColumn === undefined ? Number.NaN : middle(steps(valuesOf(table, timeColumn)))
  const timeUnit = unit ?? (Number.isFinite(step) ? timeUnitBySteps(step) : 's')
  if (timeColumn !== undefined && unit === null)
    doubts.push('The unit of the time is not written in the file: check it.')
  const rate = timeColumn === undefined ? rateAbove(table.above) : null
  if (timeColumn === undefined && value === 'current' && rate === null)
    doubts.push('The file has no time column: give the samples a second.')
  if (table.names.length === 0) doubts.push('The columns have no names: check which is which.')

  return {
    guess: {
      separator: table.separator,
      decimal: table.decimal,
      firstLine: Math.min(1000, table.firstLine),
      ...(timeColumn === undefined ? {} : { timeColumn }),
      timeUnit,
      ...(rate === null ? {} : { rate: Math.min(10_000_000, rate) }),
      valueColumn,
      value,
      scale: value === 'current' ? ({ mA: 0.001, kA: 1000 }[columns[valueColumn]?.unit ?? ''] ?? 1) : 1,
      ...(syncColumn === undefined ? {} : { syncColumn }),
    },
    doubts,
  }
}

function kindOf(
  test: RecordingTestKind,
  columns: RecordingColumn[],
  numeric: number[],
  taken: number[],
): RecordingMapping['value'] {
  if (test === 'relative compression') return 'current'
  const has = (pattern: RegExp) =>
    numeric.some(at => !taken.includes(at) && pattern.test(columns[at]?.name ?? ''))
  if (has(intervalName)) return 'tooth interval'
  const hasSpeedUnit = numeric.some(at => /^(rpm|1\/min|min-1)$/i.test(columns[at]?.unit ?? ''))
  if (has(speedName) || hasSpeedUnit || numeric.some(at => !taken.includes(at))) return 'rpm'
  return 'tooth time'
}

// What a table of readings can hold for each test: its columns, the words they go by, and how a row becomes an entry.
import type { Pull, PullOf, TestKind } from '../job/pull-schema.ts'
import type { Pressure, Vacuum } from '../units/quantity.ts'

export const csvTests = [
  'compression',
  'running compression',
  'leak-down',
  'balance',
  'injector balance',
  'misfire counts',
] as const satisfies readonly TestKind[]
export type CsvTest = (typeof csvTests)[number]

export type CsvField = {
  name: string
  label: string
  kind: 'number' | 'pressure' | 'vacuum' | 'yes or no'
  required?: true
  /** Words a heading goes by, beside the label; in lower case. */
  words: readonly string[]
  least?: number
  most?: number
  whole?: true
}

const rpm = { kind: 'number', least: 0, most: 20_000 } as const

export const csvFields: Readonly<Record<CsvTest, readonly CsvField[]>> = {
  compression: [
    {
      name: 'final',
      label: 'Final',
      kind: 'pressure',
      required: true,
      words: ['compression', 'pressure', 'reading'],
    },
    { name: 'firstPuff', label: 'First puff', kind: 'pressure', words: ['first', 'puff 1', 'first stroke'] },
    {
      name: 'puffs',
      label: 'Puffs',
      kind: 'number',
      least: 1,
      most: 60,
      whole: true,
      words: ['strokes', 'pulses'],
    },
    { name: 'wet', label: 'Wet', kind: 'yes or no', words: ['oil', 'with oil'] },
  ],
  'running compression': [
    { name: 'idle', label: 'Idle', kind: 'pressure', words: ['at idle'] },
    { name: 'snap', label: 'Snap', kind: 'pressure', words: ['snap throttle'] },
  ],
  'leak-down': [
    {
      name: 'percent',
      label: 'Percent lost',
      kind: 'number',
      required: true,
      least: 0,
      most: 100,
      words: ['leakage', 'leak-down', 'leak', 'percent', 'loss', '%'],
    },
  ],
  balance: [
    { name: 'rpmBefore', label: 'Speed before', required: true, ...rpm, words: ['before', 'rpm before'] },
    { name: 'rpmAfter', label: 'Speed after', required: true, ...rpm, words: ['after', 'rpm after', 'cut'] },
    { name: 'rpmRestored', label: 'Speed restored', ...rpm, words: ['restored', 'rpm restored'] },
    { name: 'vacuumBefore', label: 'Vacuum before', kind: 'vacuum', words: [] },
    { name: 'vacuumAfter', label: 'Vacuum after', kind: 'vacuum', words: [] },
  ],
  'injector balance': [
    { name: 'before', label: 'Before', kind: 'pressure', required: true, words: ['pressure before'] },
    { name: 'after', label: 'After', kind: 'pressure', required: true, words: ['pressure after'] },
  ],
  'misfire counts': [
    {
      name: 'count',
      label: 'Count',
      kind: 'number',
      required: true,
      least: 0,
      most: 65_535,
      whole: true,
      words: ['misfires', 'counts', 'misfire count'],
    },
  ],
}

export type CsvValues = ReadonlyMap<string, number | boolean>
export type CsvUnits = { pressure: Pressure['unit']; vacuum: Vacuum['unit'] }

type Bare<P extends Pull> = Pick<P, 'test' | 'entry'> & { cylinder: number }
export type CsvReading = { [T in CsvTest]: Bare<PullOf<T>> }[CsvTest]

/** The reading of one row, or null when a value that the test needs is missing. */
export function csvReading(
  test: CsvTest,
  cylinder: number,
  values: CsvValues,
  units: CsvUnits,
): CsvReading | null {
  const number = (name: string): number | undefined => {
    const value = values.get(name)
    return typeof value === 'number' ? value : undefined
  }
  const pressure = (name: string): Pressure | undefined => {
    const value = number(name)
    return value === undefined ? undefined : { value, unit: units.pressure }
  }
  const vacuum = (name: string): Vacuum | undefined => {
    const value = number(name)
    return value === undefined ? undefined : { value, unit: units.vacuum }
  }
  switch (test) {
    case 'compression': {
      const final = pressure('final')
      const firstPuff = pressure('firstPuff')
      const puffs = number('puffs')
      if (!final) return null
      return {
        test,
        cylinder,
        entry: {
          final,
          ...(firstPuff && { firstPuff }),
          ...(puffs !== undefined && { puffs }),
          ...(values.get('wet') === true && { wet: true }),
        },
      }
    }
    case 'running compression': {
      const idle = pressure('idle')
      const snap = pressure('snap')
      return idle || snap ? { test, cylinder, entry: { ...(idle && { idle }), ...(snap && { snap }) } } : null
    }
    case 'leak-down': {
      const percent = number('percent')
      return percent === undefined ? null : { test, cylinder, entry: { form: 'percent', percent } }
    }
    case 'balance': {
      const rpmBefore = number('rpmBefore')
      const rpmAfter = number('rpmAfter')
      const rpmRestored = number('rpmRestored')
      const vacuumBefore = vacuum('vacuumBefore')
      const vacuumAfter = vacuum('vacuumAfter')
      if (rpmBefore === undefined || rpmAfter === undefined) return null
      return {
        test,
        cylinder,
        entry: {
          rpmBefore,
          rpmAfter,
          ...(rpmRestored !== undefined && { rpmRestored }),
          ...(vacuumBefore && { vacuumBefore }),
          ...(vacuumAfter && { vacuumAfter }),
        },
      }
    }
    case 'injector balance': {
      const before = pressure('before')
      const after = pressure('after')
      return before && after ? { test, cylinder, entry: { before, after } } : null
    }
    default: {
      const count = number('count')
      return count === undefined ? null : { test, cylinder, entry: { count } }
    }
  }
}

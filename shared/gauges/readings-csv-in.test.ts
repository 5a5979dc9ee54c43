// Tables of readings as people keep them: headings, units rows, decimal commas, rows that cannot be.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pullSchema } from '../job/pull-schema.ts'
import { type CsvTest, csvFields, csvTests } from './readings-csv-fields.ts'
import { type CsvRow, guessCsvMapping, readCsvRows } from './readings-csv-in.ts'

const units = { pressure: 'psi', vacuum: 'inHg' } as const
const rowsOf = (...lines: string[]): CsvRow[] =>
  lines.map((line, at) => ({ line: at + 1, cells: line.split(';') }))
const read = (test: CsvTest, ...lines: string[]) => {
  const rows = rowsOf(...lines)
  return readCsvRows(rows, test, guessCsvMapping(rows, test, units), [1, 2, 3, 4])
}

describe('a table of compression readings', () => {
  it('is read by its headings, in any order, with a row of units and decimal commas', () => {
    const { readings, wrong } = read(
      'compression',
      'Final;Cyl;First puff;Wet',
      'bar;;bar;',
      '10,4;1;8,2;no',
      '7,9;2;5;yes',
    )
    expect(wrong).toEqual([])
    expect(readings.map(one => one.reading)).toEqual([
      {
        test: 'compression',
        cylinder: 1,
        entry: { final: { value: 10.4, unit: 'bar' }, firstPuff: { value: 8.2, unit: 'bar' } },
      },
      {
        test: 'compression',
        cylinder: 2,
        entry: { final: { value: 7.9, unit: 'bar' }, firstPuff: { value: 5, unit: 'bar' }, wet: true },
      },
    ])
  })

  it('takes the unit from the heading', () => {
    const { readings } = read('compression', 'Cylinder;Compression (kPa)', '1;1010')
    expect(readings[0]?.reading.entry).toEqual({ final: { value: 1010, unit: 'kPa' } })
  })

  it('without headings is cylinder first, then the fields in order', () => {
    const { readings } = read('compression', '1;150;118', '2;149;117')
    expect(readings.map(one => one.reading.entry)).toMatchObject([
      { final: { value: 150, unit: 'psi' }, firstPuff: { value: 118 } },
      { final: { value: 149 }, firstPuff: { value: 117 } },
    ])
  })

  it('lists every row that cannot be, by line, and takes the others', () => {
    const { readings, wrong } = read(
      'compression',
      'Cylinder;Final;Puffs',
      '1;150;8',
      '9;150;8',
      '2;high;8',
      '3;;8',
      '4;150;8.5',
      ';150;8',
      '4;-3;8',
    )
    expect(readings.map(one => one.line)).toEqual([2])
    expect(wrong.map(one => one.line)).toEqual([3, 4, 5, 6, 7, 8])
    expect(wrong.every(one => one.what !== '' && one.hint !== '')).toBe(true)
  })
})

it('reads a balance table with vacuum', () => {
  const { readings } = read(
    'balance',
    'No;Speed before;Speed after;Vacuum before [inHg];Vacuum after [inHg]',
    'No 3;760;690;19;17,5',
  )
  expect(readings[0]?.reading).toEqual({
    test: 'balance',
    cylinder: 3,
    entry: {
      rpmBefore: 760,
      rpmAfter: 690,
      vacuumBefore: { value: 19, unit: 'inHg' },
      vacuumAfter: { value: 17.5, unit: 'inHg' },
    },
  })
})

it('makes nothing but readings that a job can hold, whatever stands in the cells', () => {
  const cell = fc.oneof(
    fc.constantFrom('', '1', '2', '150', '-4', '1e9', 'yes', '8.5', '12,5', 'Cylinder', 'psi'),
    fc.string({ maxLength: 6 }),
  )
  fc.assert(
    fc.property(
      fc.constantFrom(...csvTests),
      fc.array(fc.array(cell, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 6 }),
      (test, table) => {
        const rows = table.map((cells, at) => ({ line: at + 1, cells }))
        const mapping = guessCsvMapping(rows, test, units)
        const { readings, wrong } = readCsvRows(rows, test, mapping, [1, 2])
        expect(readings.length + wrong.length).toBe(rows.length - mapping.firstRow)
        for (const { reading } of readings) {
          const pull = { ...reading, id: 'x', stage: 'as found', at: '2026-03-02T09:00:00Z' }
          expect(pullSchema.safeParse(pull).success).toBe(true)
        }
      },
    ),
  )
})

it('has words of its own for every field of a test', () => {
  for (const test of csvTests) {
    const words = csvFields[test].flatMap(field => [field.label.toLowerCase(), ...field.words])
    expect(new Set(words).size).toBe(words.length)
  }
})

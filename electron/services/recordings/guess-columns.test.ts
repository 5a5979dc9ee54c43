import { describe, expect, test } from 'vitest'
import type { RecordingTestKind } from '../../../shared/contract/recordings-contract.ts'
import { beginningLines } from './beginning-text.ts'
import { columnsOf, guessMapping } from './guess-columns.ts'
import { guessTable } from './guess-table.ts'

function guess(text: string, test: RecordingTestKind = 'relative compression') {
  const bytes = new TextEncoder().encode(text)
  const table = guessTable(beginningLines(bytes, bytes.length, 'made.csv'))
  if (!table) return null
  const columns = columnsOf(table)
  return { ...guessMapping(table, columns, test), columns }
}

describe('the columns of a recording', () => {
  test('with names and units in brackets', () => {
    const found = guess('Time (ms),Starter current (A),Sync (V)\n0.0,1.5,0\n0.1,1.6,0\n0.2,1.7,5\n')
    expect(found?.guess).toEqual({
      separator: 'comma',
      decimal: 'point',
      firstLine: 2,
      timeColumn: 0,
      timeUnit: 'ms',
      valueColumn: 1,
      value: 'current',
      scale: 1,
      syncColumn: 2,
    })
    expect(found?.doubts).toEqual([])
  })

  test('with semicolons, decimal commas, a row of units and a note above', () => {
    const found = guess('made in a workshop\n\nZeit;Kanal A\n(s);(mA)\n0,001;1,5\n0,002;1,6\n0,003;1,7\n')
    expect(found?.guess).toMatchObject({
      separator: 'semicolon',
      decimal: 'comma',
      firstLine: 5,
      timeColumn: 0,
      timeUnit: 's',
      valueColumn: 1,
      scale: 0.001,
    })
    expect(found?.columns.map(column => [column.name, column.unit])).toEqual([
      ['Zeit', 's'],
      ['Kanal A', 'mA'],
    ])
  })

  test('with tabs and no names', () => {
    const found = guess('0.0\t1.5\n0.1\t1.6\n0.2\t1.7\n')
    expect(found?.guess).toMatchObject({ separator: 'tab', timeColumn: 0, valueColumn: 1, timeUnit: 'ms' })
    expect(found?.doubts).toHaveLength(2)
  })

  test('with sample numbers and a rate in a comment', () => {
    const found = guess('# sample rate: 10 kHz\nsample,current\n1,5.5\n2,5.6\n3,5.7\n')
    expect(found?.guess).toMatchObject({ rate: 10_000, valueColumn: 1, firstLine: 3 })
    expect(found?.guess.timeColumn).toBeUndefined()
  })

  test('with one column only asks for the rate', () => {
    const found = guess('5.5\n5.6\n5.4\n')
    expect(found?.guess).toMatchObject({ valueColumn: 0, firstLine: 1 })
    expect(found?.doubts.join(' ')).toMatch(/samples a second/)
  })

  test('of crank speed', () => {
    expect(guess('time (s),rpm\n0.0,800\n0.1,805\n0.2,801\n', 'crank speed')?.guess).toMatchObject({
      timeColumn: 0,
      valueColumn: 1,
      value: 'rpm',
    })
    expect(guess('tooth,interval (us)\n1,1250\n2,1251\n3,1249\n', 'crank speed')?.guess).toMatchObject({
      valueColumn: 1,
      value: 'tooth interval',
      timeUnit: 'us',
    })
  })

  test('are read as the person says where the guess is wrong', () => {
    const lines = ['0,5', '0,6', '0,7']
    expect(guessTable(lines)).toMatchObject({ separator: 'comma', decimal: 'point' })
    expect(guessTable(lines, { separator: 'semicolon', decimal: 'comma' })?.rows).toEqual([
      ['0,5'],
      ['0,6'],
      ['0,7'],
    ])
    expect(guessTable(['a;b'], { separator: 'tab', decimal: 'point' })).toBeNull()
  })

  test('are not found in prose', () => expect(guess('Dear customer,\nyour car is ready.\n')).toBeNull())
})

describe('what is no text', () => {
  test.each([
    ['UTF-16', [0xff, 0xfe, 0x31, 0]],
    ['a workbook', [0x50, 0x4b, 3, 4]],
    ['bytes', [1, 0, 2, 0]],
  ])('is refused: %s', (_, bytes) => {
    expect(() => beginningLines(Uint8Array.from(bytes), bytes.length, 'x.csv')).toThrow(/CSV text/)
  })

  test('but old letters are read', () => {
    const lines = beginningLines(Uint8Array.from([0xb5, 0x73, 10]), 3, 'x.csv')
    expect(lines[0]).toBe('µs')
  })
})

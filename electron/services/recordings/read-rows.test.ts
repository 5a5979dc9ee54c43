import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readRows, type RowColumns } from './read-rows.ts'

const plain: RowColumns = {
  separator: 'comma',
  decimal: 'point',
  firstLine: 1,
  timeColumn: 0,
  valueColumn: 1,
}

function read(text: string, columns: RowColumns = plain, cuts: number[] = []) {
  const rows: [number, number, number][] = []
  const reader = readRows(columns, (...row) => rows.push(row))
  const bytes = new TextEncoder().encode(text)
  let from = 0
  for (const cut of [...cuts.toSorted((a, b) => a - b), bytes.length]) {
    // As a reader does: one buffer that is overwritten.
    const part = Buffer.from(bytes.subarray(from, Math.max(from, cut)))
    reader.push(part)
    part.fill(0)
    from = Math.max(from, cut)
  }
  return { rows, counts: reader.end() }
}

describe('rows of a recording', () => {
  test('are read whatever the line ends, with comments and empty lines left out', () => {
    const { rows, counts } = read('# made\r\n0.1,1\r\n\r\n// note\n0.2,2\n0.3,3')
    expect(rows.map(row => row.slice(0, 2))).toEqual([
      [0.1, 1],
      [0.2, 2],
      [0.3, 3],
    ])
    expect(counts).toMatchObject({ rows: 3, wrongRows: 0, lines: 6 })
  })

  test('are read with semicolons and decimal commas', () => {
    const columns = { ...plain, separator: 'semicolon', decimal: 'comma' } as const
    expect(read('0,5;-1,25\n', columns).rows[0]).toEqual([0.5, -1.25, Number.NaN])
  })

  test('are read from aligned columns', () => {
    const columns = { ...plain, separator: 'space' } as const
    expect(read('  0.5    7\n  0.6   8\n', columns).rows.map(row => row[1])).toEqual([7, 8])
  })

  test('give any columns in any order, and the sync', () => {
    const columns = { ...plain, timeColumn: 3, valueColumn: 1, syncColumn: 0 }
    expect(read('5,7,x,0.25\n', columns).rows).toEqual([[0.25, 7, 5]])
  })

  test('come without a time column too', () => {
    const { timeColumn: _, ...columns } = plain
    expect(read('1,8\n2,9\n', columns).rows.map(row => row[1])).toEqual([8, 9])
  })

  test('keep a missing sample and list wrong rows with line, text and reason', () => {
    const { rows, counts } = read('0.1,1\n0.2,\n0.3,abc\n0.4\n,5\n0.5,NaN\n0.6,6\n')
    expect(rows.map(row => row[1])).toEqual([1, Number.NaN, Number.NaN, 6])
    expect(counts.wrongRows).toBe(3)
    expect(counts.firstWrongRows).toEqual([
      { line: 3, text: '0.3,abc', why: 'no number in column 2' },
      { line: 4, text: '0.4', why: 'only 1 of 2 columns' },
      { line: 5, text: ',5', why: 'no number in column 1 (time)' },
    ])
  })

  test('list only the first wrong ones, with their beginnings', () => {
    const { counts } = read(`${'z'.repeat(500)},1\n`.repeat(100))
    expect(counts.wrongRows).toBe(100)
    expect(counts.firstWrongRows).toHaveLength(20)
    expect(counts.firstWrongRows[0]?.text).toHaveLength(120)
  })

  test('stop at what has no lines', () => {
    expect(read('1'.repeat(200_000), plain, [70_000, 140_000]).counts.notText).toMatch(/64 KiB/)
  })

  test('do not depend on where the file is cut into parts', () => {
    const row = fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: -99, max: 99 }))
    fc.assert(
      fc.property(
        fc.array(row, { maxLength: 30 }),
        fc.array(fc.nat(400), { maxLength: 12 }),
        (pairs, cuts) => {
          const text = pairs.map(([time, value]) => `${time / 1000},${value}\r\n`).join('')
          const whole = read(text)
          const cut = read(
            text,
            plain,
            cuts.filter(at => at <= text.length),
          )
          expect(cut.rows).toEqual(whole.rows)
          expect(cut.counts).toEqual(whole.counts)
          expect(whole.rows).toHaveLength(pairs.length)
        },
      ),
    )
  })
})

// Readings as CSV: every one is there, what was put right or struck out is marked, and no cell runs as a formula.
import { parse } from 'csv-parse/sync'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../job/apply-command.ts'
import type { Job } from '../job/job-schema.ts'
import { csvText } from './readings-csv-cell.ts'
import { readingsCsv } from './readings-csv-out.ts'
import { compression, jobWith } from './testing/evidence-job.ts'

const rowsOf = (job: Job): string[][] => parse(readingsCsv(job))
const made = compression(3, 75, { firstPuff: 40 })
const job = jobWith({ pulls: [made, { ...compression(1, 150), note: '=HYPERLINK("x")' }] })
const context = { now: '2026-03-02T10:00:00Z' }

describe('readings as CSV', () => {
  it('hold every number with its unit, and the entry beside what counts', () => {
    const outcome = applyCommand(
      job,
      { command: 'correct pulls', pullIds: [made.id], how: { kind: 'scale', factor: 2 }, reason: 'scale' },
      context,
    )
    if (!outcome.ok) throw new Error(outcome.refusal.what)
    const final = rowsOf(outcome.value).find(row => row[0] === '1' && row[4] === 'final')
    expect(final?.slice(1, 10)).toEqual([
      'as found',
      'compression',
      '3',
      'final',
      '150',
      'psi',
      '75',
      'psi',
      'scale',
    ])
  })

  it('mark what was voided', () => {
    const outcome = applyCommand(job, { command: 'void pull', pullId: made.id, reason: 'leaked' }, context)
    if (!outcome.ok) throw new Error(outcome.refusal.what)
    const rows = rowsOf(outcome.value).filter(row => row[0] === '1')
    expect(rows.map(row => row[10])).toEqual(['leaked', 'leaked'])
  })

  it('keep a formula in a note from running', () => {
    expect(rowsOf(job).at(-1)?.at(-1)).toBe('\'=HYPERLINK("x")')
  })

  it('keep the minus of a number', () => {
    expect(csvText([['-4.5', '-4.5 psi', '+1', '@x']])).toBe('-4.5,"\'-4.5 psi","\'+1","\'@x"\r\n')
  })

  it('are read back as written by another reader, and no cell begins a formula', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom('=1+1', '+x', '-x', '@x', '\t=1', ' =1', '"', 'a"b', 'a,b'),
    )
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, fc.constant('end')), { minLength: 1 }), rows => {
        const back = parse(csvText(rows))
        expect(back).toHaveLength(rows.length)
        back.forEach((row, at) => {
          row.forEach((text, column) => {
            expect(text.replace(/^'/, '')).toBe(rows[at]?.[column]?.replace(/^'/, ''))
            expect(text).not.toMatch(/^[\t\r\n ]*[=+@]/)
          })
        })
      }),
    )
  })
})

// The migration chain, tried on an invented document with three versions.
import { describe, expect, it } from 'vitest'
import { migrationChain } from './chain.ts'
import type { Migration } from './chain.ts'

// Versions invented for this test: no document of them was ever written.
const renamed: Migration = {
  from: 0,
  what: 'the complaint was called problem',
  up: ({ problem, ...rest }) => ({ ...rest, complaint: problem }),
}
const listed: Migration = {
  from: 1,
  what: 'one tray became a list of trays',
  up: ({ tray, ...rest }) => ({ ...rest, trays: [tray] }),
}
const chain = migrationChain('job', 2, [renamed, listed])

describe('a chain of migrations', () => {
  it('takes a document up one version at a time, from wherever it stands', () => {
    const oldest = { schemaVersion: 0, problem: 'Shakes', tray: 't' }
    expect(chain.migrate(oldest)).toEqual({
      ok: true,
      value: { schemaVersion: 2, complaint: 'Shakes', trays: ['t'] },
    })
    expect(oldest).toEqual({ schemaVersion: 0, problem: 'Shakes', tray: 't' })
    expect(chain.migrate({ schemaVersion: 1, complaint: 'Shakes', tray: 't' })).toEqual({
      ok: true,
      value: { schemaVersion: 2, complaint: 'Shakes', trays: ['t'] },
    })
  })

  it('hands a current document on as it is', () => {
    const current = { schemaVersion: 2, complaint: 'Shakes', trays: [] }
    expect(chain.migrate(current)).toEqual({ ok: true, value: current })
  })

  it('refuses a newer document, and a host can tell that from damage', () => {
    const newer = { schemaVersion: 3, anything: true }
    expect(chain.isNewer(newer)).toBe(true)
    expect(chain.migrate(newer)).toEqual({
      ok: false,
      refusal: {
        what: 'This job was written by a newer version of Plugtray (document version 3; this one reads up to 2).',
        where: 'schemaVersion',
        hint: 'Update Plugtray to open it. Nothing in it was changed.',
      },
    })
    for (const other of [null, [], 'text', {}, { schemaVersion: '3' }, { schemaVersion: 2 }])
      expect(chain.isNewer(other)).toBe(false)
  })

  it.each([
    [null],
    [[]],
    ['text'],
    [{}],
    [{ schemaVersion: '1' }],
    [{ schemaVersion: 1.5 }],
    [{ schemaVersion: -1 }],
  ])('refuses %j', raw => {
    expect(chain.migrate(raw).ok).toBe(false)
  })

  it('cannot be made with a gap, a repeat, or an end short of the current version', () => {
    expect(() => migrationChain('job', 3, [renamed, listed])).toThrow(
      'Migration 1 of the job starts at 0, not at 1.',
    )
    expect(() => migrationChain('job', 2, [listed, renamed])).toThrow(Error)
    expect(() => migrationChain('job', 2, [renamed, renamed])).toThrow(Error)
  })
})

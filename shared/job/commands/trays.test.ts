// Adding, renaming and removing trays.
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../apply-command.ts'
import type { Command } from '../command-schema.ts'
import { limits } from '../limits.ts'
import { context, exampleJob, laidOut, now, valueOf } from '../testing/example-job.ts'

const job = exampleJob()
const attempt = (command: Command, from = job) => applyCommand(from, command, context)
const second = { command: 'add tray', trayId: 't2', name: 'After rings', stage: 'after repair' } as const

describe('trays', () => {
  it('are added with an empty slot per plug', () => {
    const added = valueOf(attempt(second))
    expect(added.trays[0]).toBe(job.trays[0])
    expect(added.trays[1]).toEqual({
      id: 't2',
      name: 'After rings',
      stage: 'after repair',
      createdAt: now,
      slots: [1, 2, 3, 4].map(cylinder => ({ cylinder, shots: [] })),
      unsorted: [],
    })
  })

  it('are not added under an id in use, nor past the limit', () => {
    expect(attempt({ ...second, trayId: 't1' })).toMatchObject({ ok: false, refusal: { where: 'tray t1' } })
    let full = job
    for (let i = 2; i <= limits.traysPerJob; i++)
      full = valueOf(attempt({ ...second, trayId: `t${i}` }, full))
    expect(attempt({ ...second, trayId: 'one-more' }, full)).toMatchObject({
      ok: false,
      refusal: { what: 'A job holds at most 20 trays.' },
    })
  })

  it('are renamed and moved to another stage', () => {
    const rename = { command: 'rename tray', trayId: 't1', name: 'First look', stage: 'as found' } as const
    const renamed = valueOf(attempt(rename))
    expect(renamed.trays[0]).toEqual({ ...job.trays[0], name: 'First look' })
    expect(valueOf(attempt(rename, renamed))).toBe(renamed)
    expect(attempt({ ...rename, trayId: 'nope' })).toMatchObject({
      ok: false,
      refusal: { where: 'tray nope' },
    })
  })

  it('are removed with their shots, which the write-up then no longer names', () => {
    const two = valueOf(attempt(second))
    const one = valueOf(attempt({ command: 'remove tray', trayId: 't1' }, two))
    expect(one.trays.map(({ id }) => id)).toEqual(['t2'])
    expect(one.writeUp.shots).toEqual([])
    expect(one.pulls).toBe(job.pulls)
    expect(laidOut(one, 't2')).toEqual({})
  })

  it('keep the last one', () => {
    expect(attempt({ command: 'remove tray', trayId: 't1' })).toEqual({
      ok: false,
      refusal: {
        what: 'A job keeps at least one tray.',
        where: 'tray "As found"',
        hint: 'Add another tray first, or clear this one instead.',
      },
    })
  })
})

// Set-up of tests, testers, and corrections of many pulls at once.
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../apply-command.ts'
import type { Command } from '../command-schema.ts'
import type { Job } from '../job-schema.ts'
import type { Pull } from '../pull-schema.ts'
import { exampleJob } from '../testing/example-job.ts'

const context = { now: '2026-03-02T10:00:00Z', person: 'Kim' }
const after = (job: Job, command: Command): Job => {
  const outcome = applyCommand(job, command, context)
  if (!outcome.ok) throw new Error(outcome.refusal.what)
  return outcome.value
}
const refused = (job: Job, command: Command): boolean => !applyCommand(job, command, context).ok

const pull = (id: string, value: number): Pull => ({
  id,
  stage: 'as found',
  at: '2026-03-02T09:00:00Z',
  test: 'compression',
  cylinder: 1,
  entry: { final: { value, unit: 'psi' } },
})
const withPulls: Job = { ...exampleJob(), pulls: [pull('p1', 300), pull('p2', 280)] }

describe('the set-up of a test', () => {
  it('takes the place of what was said before, and empty takes it away', () => {
    const open = after(exampleJob(), {
      command: 'set up test',
      test: 'compression',
      stage: 'as found',
      conditions: { throttle: 'open' },
    })
    const closed = after(open, {
      command: 'set up test',
      test: 'compression',
      stage: 'as found',
      conditions: { throttle: 'closed' },
    })
    expect(closed.setUps).toEqual([
      { test: 'compression', stage: 'as found', conditions: { throttle: 'closed' } },
    ])
    const none = after(closed, {
      command: 'set up test',
      test: 'compression',
      stage: 'as found',
      conditions: {},
    })
    expect(none.setUps).toBeUndefined()
  })
})

describe('testers', () => {
  const gauge = { id: 'g1', kind: 'compression gauge', name: 'Long hose', division: 5, unit: 'psi' } as const
  const known = after(exampleJob(), { command: 'set instruments', instruments: [gauge] })

  it('must be there before a pull names one, and stay while one does', () => {
    const made: Command = { command: 'add pull', pull: { ...pull('new', 150), instrument: 'g1' } }
    expect(refused(exampleJob(), made)).toBe(true)
    const used = after(known, made)
    expect(refused(used, { command: 'set instruments', instruments: [] })).toBe(true)
    expect(refused(used, { command: 'set instruments', instruments: [gauge, gauge] })).toBe(true)
  })
})

describe('correcting pulls', () => {
  it('corrects all of them, with reason, time and person', () => {
    const halved = after(withPulls, {
      command: 'correct pulls',
      pullIds: ['p1', 'p2'],
      how: { kind: 'scale', factor: 0.5 },
      reason: 'a division is 5',
    })
    expect(halved.pulls.map(one => one.corrections?.at(-1))).toMatchObject([
      { entry: { final: { value: 150 } }, reason: 'a division is 5', at: context.now, by: 'Kim' },
      { entry: { final: { value: 140 } } },
    ])
    expect(halved.pulls.map(one => one.entry)).toEqual(withPulls.pulls.map(one => one.entry))
  })

  it('corrects none when one of them cannot be', () => {
    const how = { kind: 'scale', factor: 0.5 } as const
    expect(
      refused(withPulls, { command: 'correct pulls', pullIds: ['p1', 'nobody'], how, reason: 'x' }),
    ).toBe(true)
    expect(
      refused(withPulls, {
        command: 'correct pulls',
        pullIds: ['p1'],
        how: { kind: 'as entered' },
        reason: 'x',
      }),
    ).toBe(true)
  })
})

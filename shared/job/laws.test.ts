// What holds for any job and any run of commands, however unlikely.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { slotsOf } from '../engine/slots.ts'
import { applyCommand } from './apply-command.ts'
import { canonicalJson } from './canonical.ts'
import { commandLabel } from './command-label.ts'
import { commandSchema } from './command-schema.ts'
import type { Command } from './command-schema.ts'
import { photosOf } from './current.ts'
import { emptyHistory, record, redo, undo } from './history.ts'
import type { History } from './history.ts'
import type { Job } from './job-schema.ts'
import { parseJob } from './parse-job.ts'
import { arbitraryCommand } from './testing/arbitrary-command.ts'
import type { CommandMaker } from './testing/arbitrary-command.ts'
import { arbitraryJob } from './testing/arbitrary-job.ts'
import { valueOf } from './testing/example-job.ts'
import { without } from './without.ts'

const context = { now: '2031-01-01T00:00:00Z', person: 'Ana' }
const fiftyCommands = fc.array(arbitraryCommand, { minLength: 50, maxLength: 50 })

type Step = { command: Command; before: Job; after: Job; refused: boolean }

/** A refused command leaves the job as it stands. */
const runAll = (start: Job, makers: readonly CommandMaker[]): Step[] => {
  let job = start
  return makers.map((make, turn) => {
    const before = job
    const command = make(before, turn)
    const outcome = applyCommand(before, command, context)
    if (outcome.ok) job = outcome.value
    return { command, before, after: job, refused: !outcome.ok }
  })
}

const deepFreeze = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    Object.values(value).forEach(deepFreeze)
  }
  return value
}

/** The job without the voided pulls that were not there at the start, and with the time of the last change. */
const apartFromVoided = (job: Job, start: Job): Job => {
  const first = new Set(start.pulls.map(({ id }) => id))
  const pulls = job.pulls.filter(({ id, voided }) => first.has(id) || voided === undefined)
  return { ...job, updatedAt: context.now, pulls }
}

describe('any fifty commands', () => {
  it('leave a valid job, never change the one they were given, and touch neither revision nor hash', () => {
    const did = new Map<string, number>()
    fc.assert(
      fc.property(arbitraryJob, fiftyCommands, (start, makers) => {
        const steps = runAll(deepFreeze(start), makers)
        for (const { command, before, after, refused } of steps) {
          deepFreeze(after)
          expect(commandSchema.safeParse(command).success).toBe(true)
          if (refused || after === before) continue
          did.set(command.command, (did.get(command.command) ?? 0) + 1)
          expect(after.updatedAt).toBe(context.now)
          expect([after.rev, after.hash]).toEqual([start.rev, start.hash])
        }
        const end = steps.at(-1)?.after ?? start
        expect(valueOf(parseJob(JSON.parse(JSON.stringify(end))))).toEqual(end)
      }),
      { numRuns: 40 },
    )
    expect([...did.keys()].toSorted()).toHaveLength(27)
  })

  it('lose no pull and, but for removing, no photo; no pull is altered but for its voiding and corrections', () => {
    const removing = new Set(['remove shots', 'remove tray'])
    const bare = (pull: Job['pulls'][number]) => without(without(pull, 'voided'), 'corrections')
    fc.assert(
      fc.property(arbitraryJob, fiftyCommands, (start, makers) => {
        for (const { command, before, after } of runAll(start, makers)) {
          const kept = after.pulls.slice(0, before.pulls.length)
          expect(kept.map(bare)).toEqual(before.pulls.map(bare))
          if (removing.has(command.command)) continue
          const photos = new Set(photosOf(after))
          expect(photosOf(before).filter(photo => !photos.has(photo))).toEqual([])
        }
      }),
      { numRuns: 40 },
    )
  })

  it('taken back one by one give the start again, apart from voided pulls; made again they give the end', () => {
    fc.assert(
      fc.property(arbitraryJob, fiftyCommands, (start, makers) => {
        const steps = runAll(start, makers)
        let history: History = emptyHistory()
        for (const { command, before, after } of steps)
          history = record(history, before, after, commandLabel(command))
        const end = steps.at(-1)?.after ?? start
        const moves = history.past.length
        let state = { job: end, history }
        for (let i = 0; i < moves; i++) {
          state = valueOf(undo(state.history, state.job, context))
          expect(parseJob(state.job).ok).toBe(true)
        }
        expect(apartFromVoided(state.job, start)).toEqual({ ...start, updatedAt: context.now })
        expect(state.job.pulls.map(({ id }) => id)).toEqual(end.pulls.map(({ id }) => id))
        for (let i = 0; i < moves; i++) state = valueOf(redo(state.history, state.job, context))
        expect(state.job).toEqual({ ...end, updatedAt: context.now })
      }),
      { numRuns: 40 },
    )
  })
})

describe('swapping two slots twice', () => {
  it('gives the same tray, whichever way round the second time', () => {
    fc.assert(
      fc.property(arbitraryJob, fc.nat(), fc.nat(), (job, p, q) => {
        const slots = slotsOf(job.layout)
        const a = slots[p % slots.length] ?? { cylinder: 1 }
        const b = slots[q % slots.length] ?? { cylinder: 1 }
        const trayId = job.trays[0]?.id ?? ''
        const once = valueOf(applyCommand(job, { command: 'swap slots', trayId, a, b }, context))
        const twice = valueOf(applyCommand(once, { command: 'swap slots', trayId, a: b, b: a }, context))
        expect(canonicalJson(twice.trays)).toBe(canonicalJson(job.trays))
      }),
    )
  })
})

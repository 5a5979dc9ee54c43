// Setting and clearing what a person says of plugs.
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../apply-command.ts'
import type { Command, ReadingChange, SlotAddress } from '../command-schema.ts'
import { currentReading, findSlot, findTray } from '../current.ts'
import type { Job } from '../job-schema.ts'
import { context, exampleJob, now, oilReading, valueOf } from '../testing/example-job.ts'

const job = exampleJob()
const attempt = (slots: SlotAddress[], change: ReadingChange, from = job) =>
  applyCommand(from, { command: 'set reading', trayId: 't1', slots, change }, context)
const readingOf = (of: Job, cylinder: number) => {
  const tray = findTray(of, 't1')
  const slot = tray && findSlot(tray, { cylinder })
  return slot && currentReading(slot)
}
const ana = { kind: 'person', name: 'Ana' }

describe('setting a reading', () => {
  it('makes one, signed and timed', () => {
    const read = valueOf(attempt([{ cylinder: 3 }], { condition: 'lean', details: { oilInWell: false } }))
    expect(readingOf(read, 3)).toEqual({ by: ana, at: now, condition: 'lean', details: { oilInWell: false } })
    expect(read.trays[0]?.slots[0]).toBe(job.trays[0]?.slots[0])
  })

  it('reads several plugs at once and keeps what each had besides', () => {
    const read = valueOf(attempt([{ cylinder: 2 }, { cylinder: 3 }], { condition: 'carbon' }))
    expect(readingOf(read, 2)).toEqual({ ...oilReading, by: ana, at: now, condition: 'carbon' })
    expect(readingOf(read, 3)).toEqual({ by: ana, at: now, condition: 'carbon', details: {} })
  })

  it('keeps what is left out and takes away what is null', () => {
    const read = valueOf(
      attempt([{ cylinder: 2 }], { details: { wetness: null, electrodeWear: 'rounded' }, note: null }),
    )
    expect(readingOf(read, 2)).toEqual({
      by: ana,
      at: now,
      condition: 'oil-wetted',
      details: { deposits: oilReading.details.deposits, electrodeWear: 'rounded' },
    })
  })

  it('takes an empty note and an empty list of deposits for none', () => {
    const read = valueOf(attempt([{ cylinder: 2 }], { details: { deposits: [] }, note: '' }))
    expect(readingOf(read, 2)).toEqual({
      by: ana,
      at: now,
      condition: 'oil-wetted',
      details: { wetness: 'wet' },
    })
  })

  it('lets a reading that says nothing any more disappear', () => {
    const nothing = { condition: null, details: { wetness: null, deposits: null }, note: null }
    const read = valueOf(attempt([{ cylinder: 2 }], nothing))
    expect(findTray(read, 't1')?.slots[1]).not.toHaveProperty('reading')
    expect(valueOf(attempt([{ cylinder: 3 }], nothing))).toBe(job)
  })

  it('leaves time and person alone when it says the same as before', () => {
    expect(
      valueOf(attempt([{ cylinder: 2 }], { condition: 'oil-wetted', details: { wetness: 'wet' } })),
    ).toBe(job)
  })

  it('refuses as a whole when one of the plugs is not there', () => {
    expect(attempt([{ cylinder: 2 }, { cylinder: 7 }], { condition: 'lean' })).toMatchObject({
      ok: false,
      refusal: { where: 'tray "As found", cylinder 7' },
    })
  })

  it('names nobody when nobody is known', () => {
    const change: ReadingChange = { condition: 'lean' }
    const command: Command = { command: 'set reading', trayId: 't1', slots: [{ cylinder: 1 }], change }
    expect(readingOf(valueOf(applyCommand(job, command, { now, person: '' })), 1)?.by).toEqual({
      kind: 'person',
    })
  })
})

describe('clearing readings', () => {
  it('takes them away and leaves the shots', () => {
    const command: Command = {
      command: 'clear reading',
      trayId: 't1',
      slots: [{ cylinder: 2 }, { cylinder: 3 }],
    }
    const cleared = valueOf(applyCommand(job, command, context))
    expect(readingOf(cleared, 2)).toBeUndefined()
    expect(cleared.trays[0]?.slots[1]?.shots).toBe(job.trays[0]?.slots[1]?.shots)
    expect(cleared.trays[0]?.slots[2]).toBe(job.trays[0]?.slots[2])
  })
})

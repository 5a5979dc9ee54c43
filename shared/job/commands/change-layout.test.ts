// Changing the engine under trays that are already laid out.
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../apply-command.ts'
import type { Command } from '../command-schema.ts'
import { parseJob } from '../parse-job.ts'
import {
  compressionPull,
  context,
  exampleJob,
  fourInLine,
  laidOut,
  shotNamed,
  threeInLine,
  twinPlugFour,
  valueOf,
} from '../testing/example-job.ts'

const job = exampleJob()
const attempt = (command: Command, from = job) => applyCommand(from, command, context)
const toThree: Command = { command: 'change layout', layout: threeInLine }
const withShotOnFour = valueOf(
  attempt({ command: 'add shots', trayId: 't1', shots: [shotNamed('x0')], to: { cylinder: 4 } }),
)

describe('changing the layout', () => {
  it('keeps plugs whose slot stays and puts the shots of the others in the strip, by capture time', () => {
    const changed = valueOf(attempt(toThree, withShotOnFour))
    expect(changed.layout).toBe(threeInLine)
    expect(laidOut(changed)).toEqual({ 1: ['s1', 's2'], 2: ['s3'], unsorted: ['x0', 's4', 's5'] })
    expect(changed.trays[0]?.slots[1]).toBe(job.trays[0]?.slots[1])
    expect(changed.trays[0]?.slots).toHaveLength(3)
    expect(parseJob(changed).ok).toBe(true)
  })

  it('lays out every tray', () => {
    const two = valueOf(attempt({ command: 'add tray', trayId: 't2', name: 'Second', stage: 'as found' }))
    const changed = valueOf(attempt(toThree, two))
    expect(changed.trays.map(tray => tray.slots.length)).toEqual([3, 3])
  })

  it('does not guess which of two plugs a single one was', () => {
    const cleared = valueOf(attempt({ command: 'clear reading', trayId: 't1', slots: [{ cylinder: 2 }] }))
    const changed = valueOf(attempt({ command: 'change layout', layout: twinPlugFour }, cleared))
    expect(laidOut(changed)).toEqual({ unsorted: ['s1', 's2', 's3', 's4', 's5'] })
    expect(changed.trays[0]?.slots).toHaveLength(8)
  })

  it('refuses to leave a reading without its plug', () => {
    const read = valueOf(
      attempt({
        command: 'set reading',
        trayId: 't1',
        slots: [{ cylinder: 4 }],
        change: { condition: 'lean' },
      }),
    )
    expect(attempt(toThree, read)).toMatchObject({
      ok: false,
      refusal: {
        what: 'Example three has no cylinder 4, and that plug has a reading.',
        where: 'tray "As found", cylinder 4',
      },
    })
  })

  it('refuses to leave a pull without its cylinder until it is voided, and then does not count it again', () => {
    const pulled = valueOf(attempt({ command: 'add pull', pull: compressionPull('p4', 4) }))
    expect(attempt(toThree, pulled)).toMatchObject({
      ok: false,
      refusal: { where: 'pull p4, cylinder 4', hint: 'Void the pull with a reason, then change the layout.' },
    })
    const voided = valueOf(attempt({ command: 'void pull', pullId: 'p4', reason: 'Wrong engine' }, pulled))
    const changed = valueOf(attempt(toThree, voided))
    expect(changed.pulls).toHaveLength(2)
    expect(parseJob(changed).ok).toBe(true)
    expect(attempt({ command: 'unvoid pull', pullId: 'p4' }, changed)).toMatchObject({
      ok: false,
      refusal: { what: 'The engine of this job has no cylinder 4.' },
    })
  })

  it('refuses a layout that contradicts itself', () => {
    const layout = { ...threeInLine, firingOrder: [1, 3, 3] }
    expect(attempt({ command: 'change layout', layout })).toMatchObject({
      ok: false,
      refusal: { hint: 'Correct the layout first.' },
    })
  })

  it('to the same one changes nothing', () => {
    expect(valueOf(attempt({ command: 'change layout', layout: { ...fourInLine } }))).toBe(job)
  })
})

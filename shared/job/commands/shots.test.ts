// Adding, laying out, swapping and removing shots.
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../apply-command.ts'
import type { Command } from '../command-schema.ts'
import { photosOf } from '../current.ts'
import { limits } from '../limits.ts'
import { context, exampleJob, laidOut, oilReading, shotNamed, valueOf } from '../testing/example-job.ts'

const job = exampleJob()
const attempt = (command: Command, from = job) => applyCommand(from, command, context)
const after = (command: Command, from = job) => valueOf(attempt(command, from))
const trayId = 't1'

describe('adding shots', () => {
  it('puts them in the unsorted strip by capture time', () => {
    const early = shotNamed('x0')
    const added = after({ command: 'add shots', trayId, shots: [shotNamed('x6'), early] })
    expect(laidOut(added)).toEqual({ 1: ['s1', 's2'], 2: ['s3'], unsorted: ['x0', 's4', 's5', 'x6'] })
    expect(added.trays[0]?.slots).toBe(job.trays[0]?.slots)
  })

  it('puts them at the end of a slot when one is named', () => {
    const added = after({ command: 'add shots', trayId, shots: [shotNamed('x0')], to: { cylinder: 1 } })
    expect(laidOut(added)).toMatchObject({ 1: ['s1', 's2', 'x0'], unsorted: ['s4', 's5'] })
    expect(added.trays[0]?.slots[1]).toBe(job.trays[0]?.slots[1])
  })

  it('refuses unknown trays and slots, ids in use on any tray, and ids named twice', () => {
    const two = after({ command: 'add tray', trayId: 't2', name: 'Second', stage: 'as found' })
    const shots = [shotNamed('x1')]
    const refused: [Command, string][] = [
      [{ command: 'add shots', trayId: 'nope', shots }, 'tray nope'],
      [{ command: 'add shots', trayId, shots, to: { cylinder: 5 } }, 'tray "As found", cylinder 5'],
      [
        { command: 'add shots', trayId, shots, to: { cylinder: 1, plug: 'A' } },
        'tray "As found", cylinder 1, plug A',
      ],
      [{ command: 'add shots', trayId: 't2', shots: [shotNamed('s1')] }, 'shot s1, file s1.jpg'],
      [{ command: 'add shots', trayId, shots: [...shots, ...shots] }, 'shot x1, file x1.jpg'],
    ]
    for (const [command, where] of refused)
      expect(attempt(command, two)).toMatchObject({ ok: false, refusal: { where } })
  })

  it('refuses to overfill a slot', () => {
    const many = Array.from({ length: limits.shotsPerSlot }, (_, i) => shotNamed(`m-${i}`))
    const command = { command: 'add shots', trayId, to: { cylinder: 1 } } as const
    expect(attempt({ ...command, shots: many })).toMatchObject({
      ok: false,
      refusal: { what: 'One plug holds at most 200 shots.', where: 'tray "As found", cylinder 1' },
    })
    expect(attempt({ ...command, to: { cylinder: 3 }, shots: many }).ok).toBe(true)
  })
})

describe('moving shots', () => {
  it('takes them from anywhere on the tray, in the order named', () => {
    const moved = after({ command: 'move shots', trayId, shots: ['s5', 's1'], to: { cylinder: 3 } })
    expect(laidOut(moved)).toEqual({ 1: ['s2'], 2: ['s3'], 3: ['s5', 's1'], unsorted: ['s4'] })
  })

  it('leaves those where they are that lie there already', () => {
    const to = { cylinder: 1 }
    expect(after({ command: 'move shots', trayId, shots: ['s1'], to })).toBe(job)
    expect(laidOut(after({ command: 'move shots', trayId, shots: ['s4', 's1'], to }))).toMatchObject({
      1: ['s1', 's2', 's4'],
    })
  })

  it('puts them back in the strip by capture time', () => {
    const back = after({ command: 'move shots', trayId, shots: ['s2'], to: null })
    expect(laidOut(back)).toEqual({ 1: ['s1'], 2: ['s3'], unsorted: ['s2', 's4', 's5'] })
  })

  it('refuses a shot of another tray and says where it lies', () => {
    const two = after({ command: 'add tray', trayId: 't2', name: 'Second', stage: 'as found' })
    expect(attempt({ command: 'move shots', trayId: 't2', shots: ['s1'], to: null }, two)).toEqual({
      ok: false,
      refusal: {
        what: 'This tray has no such shot.',
        where: 'tray "Second", shot s1',
        hint: 'The shot lies on tray "As found".',
      },
    })
  })
})

describe('filling slots', () => {
  it('moves each shot to its slot', () => {
    const filled = after({
      command: 'fill slots',
      trayId,
      assignments: [
        { shot: 's4', to: { cylinder: 4 } },
        { shot: 's1', to: { cylinder: 3 } },
        { shot: 's5', to: { cylinder: 4 } },
      ],
    })
    expect(laidOut(filled)).toEqual({ 1: ['s2'], 2: ['s3'], 3: ['s1'], 4: ['s4', 's5'] })
    expect(filled.trays[0]?.slots[1]?.reading).toBe(oilReading)
  })

  it('refuses a shot with two places, and changes nothing when one shot is unknown', () => {
    const twice = [1, 2].map(cylinder => ({ shot: 's4', to: { cylinder } }))
    expect(attempt({ command: 'fill slots', trayId, assignments: twice })).toMatchObject({
      ok: false,
      refusal: { where: 'tray "As found", shot s4, cylinder 2' },
    })
    const assignments = ['s4', 's9'].map(shot => ({ shot, to: { cylinder: 1 } }))
    expect(attempt({ command: 'fill slots', trayId, assignments })).toMatchObject({
      ok: false,
      refusal: { where: 'tray "As found", shot s9' },
    })
  })
})

describe('removing shots', () => {
  it('takes the reference away, in tray and write-up, and touches nothing else', () => {
    const less = after({ command: 'remove shots', trayId, shots: ['s1', 's5'] })
    expect(laidOut(less)).toEqual({ 1: ['s2'], 2: ['s3'], unsorted: ['s4'] })
    expect(less.writeUp.shots).toEqual(['s4'])
    expect(less.trays[0]?.slots[1]).toBe(job.trays[0]?.slots[1])
    expect(attempt({ command: 'remove shots', trayId, shots: ['s9'] }).ok).toBe(false)
  })

  it('keeps a photo that another shot shows', () => {
    const copy = shotNamed('x1', { photo: shotNamed('s1').photo })
    const twice = after({ command: 'add shots', trayId, shots: [copy] })
    const once = after({ command: 'remove shots', trayId, shots: ['s1'] }, twice)
    expect(photosOf(once)).toContain(copy.photo)
  })
})

describe('what a shot shows', () => {
  it('is set for several shots, in slots and strip', () => {
    const marked = after({ command: 'set shot kind', trayId, shots: ['s1', 's4'], kind: 'plug well' })
    const kinds = marked.trays[0]?.slots[0]?.shots.map(({ kind }) => kind)
    expect(kinds).toEqual(['plug well', 'end-on'])
    expect(marked.trays[0]?.unsorted[0]?.kind).toBe('plug well')
    expect(after({ command: 'set shot kind', trayId, shots: ['s1'], kind: 'end-on' })).toBe(job)
  })
})

describe('swapping slots', () => {
  const swap = { command: 'swap slots', trayId, a: { cylinder: 2 }, b: { cylinder: 4 } } as const

  it('exchanges shots and reading, and leaves the other slots', () => {
    const swapped = after(swap)
    expect(laidOut(swapped)).toMatchObject({ 1: ['s1', 's2'], 4: ['s3'] })
    expect(swapped.trays[0]?.slots[3]).toEqual({ cylinder: 4, shots: [shotNamed('s3')], reading: oilReading })
    expect(swapped.trays[0]?.slots[1]).toEqual({ cylinder: 2, shots: [] })
    expect(swapped.trays[0]?.slots[0]).toBe(job.trays[0]?.slots[0])
  })

  it('changes nothing for one and the same slot or two bare ones', () => {
    expect(after({ ...swap, b: { cylinder: 2 } })).toBe(job)
    expect(after({ ...swap, a: { cylinder: 3 } })).toBe(job)
  })

  it('refuses a cylinder that the engine lacks', () => {
    expect(attempt({ ...swap, b: { cylinder: 9 } })).toMatchObject({
      ok: false,
      refusal: { where: 'tray "As found", cylinder 9' },
    })
  })
})

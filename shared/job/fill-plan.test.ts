// Laying a row of photos out over the plugs: orders, groups by time, what is missing and left over.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { slotKey, slotsOf } from '../engine/slots.ts'
import { applyCommand } from './apply-command.ts'
import { groupByTime, planFill, slotOrder } from './fill-plan.ts'
import { newJob } from './new-job.ts'
import { arbitraryLayout } from './testing/arbitrary-layout.ts'
import { arbitraryShot } from './testing/arbitrary-parts.ts'
import { fourInLine, laidOut, now, shotNamed, twinPlugFour, valueOf } from './testing/example-job.ts'
import type { Shot } from './tray-schema.ts'

const keys = (slots: Parameters<typeof slotKey>[0][]) => slots.map(slotKey)
/** Shot `n` in capture order, taken `seconds` after nine. */
const taken = (n: number, seconds: number): Shot =>
  shotNamed(`n${n}`, {
    fileName: `IMG_${n}.jpg`,
    takenAt: { local: new Date(Date.UTC(2026, 2, 2, 9, 0, seconds)).toISOString().slice(0, 19) },
  })
const undated = (n: number): Shot => {
  const { takenAt: _, ...rest } = taken(n, 0)
  return rest
}
const everyTenSeconds = (count: number) => Array.from({ length: count }, (_, i) => taken(i + 1, i * 10))

describe('the order of slots', () => {
  it('goes by cylinder number or firing order, round from the first cylinder', () => {
    expect(keys(slotOrder(fourInLine, 'cylinder'))).toEqual(['1', '2', '3', '4'])
    expect(keys(slotOrder(fourInLine, 'cylinder', 3))).toEqual(['3', '4', '1', '2'])
    expect(keys(slotOrder(fourInLine, 'firing'))).toEqual(['1', '3', '4', '2'])
    expect(keys(slotOrder(fourInLine, 'firing', 4))).toEqual(['4', '2', '1', '3'])
  })

  it('takes A then B within each cylinder', () => {
    expect(keys(slotOrder(twinPlugFour, 'firing', 3))).toEqual([
      '3A',
      '3B',
      '4A',
      '4B',
      '2A',
      '2B',
      '1A',
      '1B',
    ])
  })

  it('is empty for a start that the engine lacks, and has every slot once otherwise', () => {
    expect(slotOrder(fourInLine, 'cylinder', 5)).toEqual([])
    fc.assert(
      fc.property(
        arbitraryLayout,
        fc.constantFrom('cylinder' as const, 'firing' as const),
        (layout, order) => {
          expect(keys(slotOrder(layout, order)).toSorted()).toEqual(keys(slotsOf(layout)).toSorted())
        },
      ),
    )
  })
})

describe('groups by time', () => {
  it('begin where more than the gap passes', () => {
    const shots = [taken(1, 0), taken(2, 5), taken(3, 15), taken(4, 26), taken(5, 27)]
    const ids = (gap: number) => groupByTime(shots, gap).map(group => group.map(({ id }) => id))
    expect(ids(10)).toEqual([
      ['n1', 'n2', 'n3'],
      ['n4', 'n5'],
    ])
    expect(ids(9.5)).toEqual([['n1', 'n2'], ['n3'], ['n4', 'n5']])
    expect(ids(60)).toEqual([['n1', 'n2', 'n3', 'n4', 'n5']])
    expect(groupByTime([], 10)).toEqual([])
  })

  it('see sub-seconds, and take no undated shot', () => {
    const early = shotNamed('a', { takenAt: { local: '2026-03-02T09:00:00', subSec: '9' } })
    const late = shotNamed('b', { takenAt: { local: '2026-03-02T09:00:03', subSec: '1' } })
    expect(groupByTime([late, undated(1), early], 2.1)).toEqual([[early], [late]])
    expect(groupByTime([late, undated(1), early], 2.3)).toEqual([[early, late]])
  })
})

describe('the plan', () => {
  const slots = slotOrder(fourInLine, 'firing')

  it('lays a fixed number on each plug', () => {
    const plan = planFill({ shots: everyTenSeconds(8).toReversed(), slots, perSlot: 2 })
    expect(plan.assignments.map(({ shot, to }) => `${shot}>${slotKey(to)}`)).toEqual([
      'n1>1',
      'n2>1',
      'n3>3',
      'n4>3',
      'n5>4',
      'n6>4',
      'n7>2',
      'n8>2',
    ])
    expect(plan).toMatchObject({ missing: [], leftOver: [] })
  })

  it('says which plugs go short and which shots are left', () => {
    const short = planFill({ shots: everyTenSeconds(5), slots, perSlot: 2 })
    expect(keys(short.missing)).toEqual(['4', '2'])
    expect(short.assignments).toHaveLength(5)
    const over = planFill({ shots: everyTenSeconds(6), slots, perSlot: 1 })
    expect(over.leftOver.map(({ id }) => id)).toEqual(['n5', 'n6'])
    expect(over.missing).toEqual([])
  })

  it('lays groups between pauses, however many shots each has', () => {
    const shots = [
      taken(1, 0),
      taken(2, 3),
      taken(3, 30),
      taken(4, 60),
      taken(5, 64),
      taken(6, 68),
      undated(7),
    ]
    const plan = planFill({ shots, slots, gapSeconds: 15 })
    expect(plan.assignments.map(({ shot, to }) => `${shot}>${slotKey(to)}`)).toEqual([
      'n1>1',
      'n2>1',
      'n3>3',
      'n4>4',
      'n5>4',
      'n6>4',
    ])
    expect(keys(plan.missing)).toEqual(['2'])
    expect(plan.leftOver.map(({ id }) => id)).toEqual(['n7'])
  })

  it('uses each shot at most once, drops none, and is a command the job accepts', () => {
    const how = fc.oneof(
      fc.integer({ min: 1, max: 4 }).map(perSlot => ({ perSlot })),
      fc.integer({ min: 0, max: 4000 }).map(gapSeconds => ({ gapSeconds })),
    )
    const arbitraryShots = fc
      .array(arbitraryShot, { maxLength: 30 })
      .map(shots => shots.map((shot, i) => ({ ...shot, id: `f${i}` })))
    fc.assert(
      fc.property(arbitraryLayout, arbitraryShots, how, (layout, shots, way) => {
        const order = slotOrder(layout, 'firing')
        const plan = planFill({ shots, slots: order, ...way })
        const used = [...plan.assignments.map(({ shot }) => shot), ...plan.leftOver.map(({ id }) => id)]
        expect(used.toSorted()).toEqual(shots.map(({ id }) => id).toSorted())
        const bare = new Set(
          keys(order).filter(key => !plan.assignments.some(({ to }) => slotKey(to) === key)),
        )
        expect(keys(plan.missing)).toEqual(expect.arrayContaining([...bare]))
        if (plan.assignments.length === 0) return
        const start = { id: 'j', trayId: 't1', now, complaint: '', engine: { vehicle: '' }, layout }
        const held = valueOf(
          applyCommand(newJob(start), { command: 'add shots', trayId: 't1', shots }, { now }),
        )
        const filled = valueOf(
          applyCommand(held, { command: 'fill slots', trayId: 't1', assignments: plan.assignments }, { now }),
        )
        expect(laidOut(filled)['unsorted'] ?? []).toEqual(plan.leftOver.map(({ id }) => id))
      }),
    )
  })
})

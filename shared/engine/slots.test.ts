// Every plug has one slot and one key, in an order that people can count along.
import * as fc from 'fast-check'
import { expect, it } from 'vitest'
import { slotKey, slotLabel, slotsOf, sameSlot } from './slots.ts'
import { arbitraryEngine } from './testing/arbitrary-engine.ts'

it('gives every plug one slot, in rising order of cylinders, A before B', () => {
  fc.assert(
    fc.property(arbitraryEngine, layout => {
      const slots = slotsOf(layout)
      const count = layout.firingOrder.length
      expect(slots.length).toBe(count * layout.plugsPerCylinder)
      expect(new Set(slots.map(slotKey)).size).toBe(slots.length)
      const inOrder = slots.toSorted(
        (a, b) => a.cylinder - b.cylinder || (a.plug ?? '').localeCompare(b.plug ?? ''),
      )
      expect(slots).toEqual(inOrder)
      expect(slots.every(slot => (slot.plug === undefined) === (layout.plugsPerCylinder === 1))).toBe(true)
    }),
  )
})

it('tells slots apart exactly where cylinder or plug differ', () => {
  fc.assert(
    fc.property(arbitraryEngine, layout => {
      const slots = slotsOf(layout)
      for (const [i, a] of slots.entries())
        for (const [j, b] of slots.entries()) expect(sameSlot(a, b)).toBe(i === j)
    }),
  )
})

it('names a slot for keys and for people', () => {
  expect([slotKey({ cylinder: 3 }), slotLabel({ cylinder: 3 })]).toEqual(['3', 'cylinder 3'])
  expect([slotKey({ cylinder: 12, plug: 'B' }), slotLabel({ cylinder: 12, plug: 'B' })]).toEqual([
    '12B',
    'cylinder 12, plug B',
  ])
})

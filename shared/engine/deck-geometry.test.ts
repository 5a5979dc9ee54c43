// Nothing on the deck overlaps or falls off its edge, whichever way the engine faces and however many plugs it has.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { checkLayout } from './check-layout.ts'
import { deckGeometry } from './deck-geometry.ts'
import { builtInLayouts, layoutById, withPlugsPerCylinder } from './layouts.ts'
import { slotKey, slotsOf } from './slots.ts'

const layouts = fc
  .record({
    layout: fc.constantFrom(...builtInLayouts),
    plugs: fc.constantFrom<1 | 2>(1, 2),
    front: fc.constantFrom<'top' | 'bottom' | 'left' | 'right'>('top', 'bottom', 'left', 'right'),
  })
  .map(({ layout, plugs, front }) => ({ ...withPlugsPerCylinder(layout, plugs), front }))

it('draws every plug once, apart from the others, inside its bank and the drawing', () => {
  fc.assert(
    fc.property(layouts, layout => {
      const deck = deckGeometry(layout)
      expect(deck.bores.map(slotKey).toSorted()).toEqual(slotsOf(layout).map(slotKey).toSorted())
      for (const [i, a] of deck.bores.entries()) {
        const bank = deck.banks.find(
          one =>
            a.x - a.r >= one.x &&
            a.x + a.r <= one.x + one.width &&
            a.y - a.r >= one.y &&
            a.y + a.r <= one.y + one.height,
        )
        expect(bank).toBeDefined()
        for (const b of deck.bores.slice(i + 1))
          expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(a.r + b.r)
      }
      for (const bank of deck.banks) {
        expect(bank.x).toBeGreaterThanOrEqual(0)
        expect(bank.y).toBeGreaterThanOrEqual(0)
        expect(bank.x + bank.width).toBeLessThanOrEqual(deck.width)
        expect(bank.y + bank.height).toBeLessThanOrEqual(deck.height)
      }
      expect(deck.firingPath.map(one => one.cylinder)).toEqual(layout.firingOrder)
    }),
  )
})

it('puts the front on the side asked for', () => {
  const layout = builtInLayouts[0]
  if (!layout) throw new Error('no layout')
  const at = (front: 'top' | 'bottom' | 'left' | 'right') => {
    const deck = deckGeometry({ ...layout, front })
    return { x: deck.front.x / deck.width, y: deck.front.y / deck.height, side: deck.front.side }
  }
  expect(at('top').y).toBeLessThan(0.3)
  expect(at('bottom').y).toBeGreaterThan(0.7)
  expect(at('left').x).toBeLessThan(0.3)
  expect(at('right').x).toBeGreaterThan(0.7)
})

it('finds layouts by full id, by engine alone and with two plugs', () => {
  expect(layoutById('i6-153624')?.firingOrder).toEqual([1, 5, 3, 6, 2, 4])
  expect(layoutById('i6')?.id).toBe('i6-153624')
  expect(layoutById('i4-twin')).toMatchObject({ id: 'i4-1342-twin', plugsPerCylinder: 2 })
  expect(layoutById('i7')).toBeUndefined()
  const twin = layoutById('i4-twin')
  if (!twin) throw new Error('no twin')
  expect(withPlugsPerCylinder(twin, 1)).toEqual(layoutById('i4'))
})

it('accepts every built-in layout and names what is wrong with a broken one', () => {
  for (const layout of builtInLayouts) expect(checkLayout(layout)).toEqual([])
  const layout = layoutById('v6-oddeven')
  if (!layout) throw new Error('no vee six')
  const fields = (changed: Partial<typeof layout>) =>
    checkLayout({ ...layout, ...changed }).map(one => one.field)
  expect(fields({ firingOrder: [1, 2, 3, 4, 5, 5] })).toEqual(['firingOrder', 'firingOrder'])
  expect(fields({ intervalsDeg: [120, 120, 120, 120, 120, 100] })).toEqual(['intervalsDeg'])
  expect(fields({ arrangement: 'inline' })).toEqual(['arrangement'])
  expect(
    fields({
      banks: [
        { name: 'a', cylinders: [1, 3, 5] },
        { name: 'b', cylinders: [2, 4, 7] },
      ],
    }),
  ).toContain('banks')
})

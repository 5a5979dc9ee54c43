// Nothing on the deck overlaps or falls off its edge, whichever way the engine faces and however many plugs it has.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deckGeometry } from './deck-geometry.ts'
import { builtInLayouts, layoutById } from './layouts.ts'
import type { Layout } from './layout-schema.ts'
import { slotKey, slotsOf } from './slots.ts'
import { arbitraryEngine } from './testing/arbitrary-engine.ts'

const engine = fc.oneof(
  arbitraryEngine,
  fc
    .record({
      layout: fc.constantFrom(...builtInLayouts),
      front: fc.constantFrom<Layout['front']>('top', 'bottom', 'left', 'right'),
      plugsPerCylinder: fc.constantFrom<1 | 2>(1, 2),
    })
    .map(({ layout, front, plugsPerCylinder }): Layout => ({ ...layout, front, plugsPerCylinder })),
)

type Box = { x: number; y: number; width: number; height: number }
const inside = (inner: Box, outer: Box): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.width <= outer.x + outer.width &&
  inner.y + inner.height <= outer.y + outer.height
const apart = (a: Box, b: Box): boolean =>
  a.x + a.width < b.x || b.x + b.width < a.x || a.y + a.height < b.y || b.y + b.height < a.y
const around = ({ x, y, r }: { x: number; y: number; r: number }): Box => ({
  x: x - r,
  y: y - r,
  width: 2 * r,
  height: 2 * r,
})
const eachPair = <T>(things: readonly T[]): [T, T][] =>
  things.flatMap((a, i) => things.slice(i + 1).map((b): [T, T] => [a, b]))

describe('the drawing', () => {
  it('has every plug once, in its cylinder, in its bank, on the sheet', () => {
    fc.assert(
      fc.property(engine, layout => {
        const deck = deckGeometry(layout)
        const sheet = { x: 0, y: 0, width: deck.width, height: deck.height }
        expect(deck.bores.map(slotKey).toSorted()).toEqual(slotsOf(layout).map(slotKey).toSorted())
        for (const bore of deck.bores) {
          const cylinder = deck.cylinders.find(one => one.cylinder === bore.cylinder)
          const at = layout.banks.findIndex(bank => bank.cylinders.includes(bore.cylinder))
          const bank = deck.banks[at]
          if (!cylinder || !bank) throw new Error(`cylinder ${bore.cylinder} is not drawn`)
          expect(inside(around(bore), cylinder)).toBe(true)
          expect(inside(cylinder, bank)).toBe(true)
          expect(inside(bank, sheet)).toBe(true)
        }
        expect(deck.front.x > 0 && deck.front.x < deck.width).toBe(true)
        expect(deck.front.y > 0 && deck.front.y < deck.height).toBe(true)
      }),
    )
  })
  it('keeps bores, cylinders and banks clear of each other', () => {
    fc.assert(
      fc.property(engine, layout => {
        const deck = deckGeometry(layout)
        for (const [a, b] of eachPair(deck.bores))
          expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(a.r + b.r)
        for (const [a, b] of eachPair(deck.cylinders)) expect(apart(a, b)).toBe(true)
        for (const [a, b] of eachPair(deck.banks)) expect(apart(a, b)).toBe(true)
      }),
    )
  })
  it('leads the firing path through the middle of each cylinder in firing order', () => {
    fc.assert(
      fc.property(engine, layout => {
        const deck = deckGeometry(layout)
        expect(deck.firingPath.map(one => one.cylinder)).toEqual(layout.firingOrder)
        for (const stop of deck.firingPath) {
          const box = deck.cylinders.find(one => one.cylinder === stop.cylinder)
          expect(box && [box.x + box.width / 2, box.y + box.height / 2]).toEqual([stop.x, stop.y])
        }
      }),
    )
  })
  it('is turned, never mirrored: front to rear and first bank to second stand as they do with the front on top', () => {
    fc.assert(
      fc.property(engine, layout => {
        fc.pre(layout.banks.length === 2)
        const deck = deckGeometry(layout)
        const [first, second] = deck.banks
        if (!first || !second) throw new Error('a bank is not drawn')
        const across = {
          x: second.x + second.width / 2 - first.x - first.width / 2,
          y: second.y + second.height / 2 - first.y - first.height / 2,
        }
        const rearward = { x: deck.width / 2 - deck.front.x, y: deck.height / 2 - deck.front.y }
        expect(across.x * rearward.y - across.y * rearward.x).toBeGreaterThan(0)
      }),
    )
  })
})

describe('the front', () => {
  const layout = layoutById('v6-oddeven-123456')
  if (!layout) throw new Error('no vee six')
  const first = (front: Layout['front']) => {
    const deck = deckGeometry({ ...layout, front })
    const bore = deck.bores.find(one => one.cylinder === 1)
    if (!bore) throw new Error('no cylinder 1')
    return { front: deck.front, bore: [bore.x / deck.width, bore.y / deck.height], deck }
  }
  it('is at the top by default, cylinder 1 front left and slightly ahead of cylinder 2', () => {
    const { deck, front, bore } = first('top')
    expect(front.side).toBe('top')
    expect(front.y).toBeLessThan(Math.min(...deck.banks.map(bank => bank.y)))
    expect(bore[0]).toBeLessThan(0.5)
    expect(bore[1]).toBeLessThan(0.5)
    expect(deck.bores.find(one => one.cylinder === 1)?.y).toBeLessThan(
      deck.bores.find(one => one.cylinder === 2)?.y ?? 0,
    )
  })
  it('goes to the side asked for, and cylinder 1 with it', () => {
    expect(first('bottom').front.y).toBeGreaterThan(first('bottom').deck.height * 0.7)
    expect(first('bottom').bore[1]).toBeGreaterThan(0.5)
    expect(first('left').front.x).toBeLessThan(first('left').deck.width * 0.3)
    expect(first('left').bore[0]).toBeLessThan(0.5)
    expect(first('right').front.x).toBeGreaterThan(first('right').deck.width * 0.7)
    expect(first('right').bore[0]).toBeGreaterThan(0.5)
  })
})

it('draws two plugs of a cylinder smaller than one, A before B', () => {
  const layout = layoutById('i4-twin')
  if (!layout) throw new Error('no inline four')
  const [a, b] = deckGeometry(layout).bores
  const [one] = deckGeometry({ ...layout, plugsPerCylinder: 1 }).bores
  expect([a && slotKey(a), b && slotKey(b)]).toEqual(['1A', '1B'])
  expect(a?.x).toBeLessThan(b?.x ?? 0)
  expect(a?.r).toBeLessThan(one?.r ?? 0)
})

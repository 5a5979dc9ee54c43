// However large the frame: the drawing stays inside, callouts do not cover it or each other, and none is lost.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { builtInLayouts, withPlugsPerCylinder } from '../../../shared/engine/layouts.ts'
import { cylindersOf } from '../../../shared/engine/relations.ts'
import { type Box, deckPlaces } from './deck-places.ts'

const layouts = fc
  .tuple(
    fc.constantFrom(...builtInLayouts),
    fc.constantFrom(1 as const, 2 as const),
    fc.constantFrom('top' as const, 'bottom' as const, 'left' as const, 'right' as const),
  )
  .map(([layout, plugs, front]): Layout => ({ ...withPlugsPerCylinder(layout, plugs), front }))
const frames = fc.record({
  width: fc.integer({ min: 360, max: 1200 }),
  height: fc.integer({ min: 460, max: 1400 }),
})

const meet = (a: Box, b: Box): boolean =>
  a.left < b.left + b.width - 0.01 &&
  b.left < a.left + a.width - 0.01 &&
  a.top < b.top + b.height - 0.01 &&
  b.top < a.top + a.height - 0.01

describe('places on the deck', () => {
  it('gives every cylinder one callout', () => {
    fc.assert(
      fc.property(layouts, frames, (layout, frame) => {
        const { callouts } = deckPlaces(layout, deckGeometry(layout), frame)
        expect(callouts.map(one => one.cylinder)).toEqual(cylindersOf(layout))
      }),
    )
  })

  it('keeps everything in the frame and callouts off the cylinders', () => {
    fc.assert(
      fc.property(layouts, frames, (layout, frame) => {
        const { deck, scale, x, y, callouts } = deckPlaces(layout, deckGeometry(layout), frame)
        const inFrame = (box: { x: number; y: number; width: number; height: number }): Box => ({
          left: x + box.x * scale,
          top: y + box.y * scale,
          width: box.width * scale,
          height: box.height * scale,
        })
        for (const box of [...deck.banks.map(inFrame), ...callouts]) {
          expect(box.left).toBeGreaterThanOrEqual(-1)
          expect(box.left + box.width).toBeLessThanOrEqual(frame.width + 1)
          expect(box.top).toBeGreaterThanOrEqual(-1)
          expect(box.top + box.height).toBeLessThanOrEqual(frame.height + 1)
        }
        for (const callout of callouts)
          for (const cylinder of deck.cylinders) expect(meet(callout, inFrame(cylinder))).toBe(false)
      }),
    )
  })

  it('keeps each cylinder inside its bank, and each bore inside its cylinder', () => {
    fc.assert(
      fc.property(layouts, frames, (layout, frame) => {
        const { deck } = deckPlaces(layout, deckGeometry(layout), frame)
        for (const [at, bank] of deck.banks.entries())
          for (const one of deck.cylinders.filter(({ cylinder }) =>
            layout.banks[at]?.cylinders.includes(cylinder),
          )) {
            expect(one.y).toBeGreaterThanOrEqual(bank.y)
            expect(one.y + one.height).toBeLessThanOrEqual(bank.y + bank.height)
            const bores = deck.bores.filter(bore => bore.cylinder === one.cylinder)
            expect(bores.length).toBe(layout.plugsPerCylinder)
            for (const bore of bores)
              expect(Math.abs(bore.y - one.y - one.height / 2)).toBeLessThan(one.height / 2)
          }
      }),
    )
  })

  it('keeps callouts apart where a cylinder has the height of one', () => {
    fc.assert(
      fc.property(layouts, frames, (layout, frame) => {
        const { scale, callouts } = deckPlaces(layout, deckGeometry(layout), frame)
        fc.pre(scale * 100 >= 44)
        for (const [at, one] of callouts.entries())
          for (const other of callouts.slice(at + 1)) expect(meet(one, other)).toBe(false)
      }),
    )
  })
})

// Laws of how cylinders stand to each other, on random engines: what one is to another, the other is to it.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { builtInLayouts, layoutById, withPlugsPerCylinder } from './layouts.ts'
import type { Layout } from './layout-schema.ts'
import {
  bankMates,
  bankOf,
  companion,
  cylindersOf,
  fireAngle,
  firingPredecessor,
  firingSuccessor,
  isEnd,
  neighbours,
} from './relations.ts'
import { arbitraryEngine } from './testing/arbitrary-engine.ts'

const engine = fc.oneof(arbitraryEngine, fc.constantFrom(...builtInLayouts))

describe('neighbours and banks', () => {
  it('are mutual, and neighbours share a bank', () => {
    fc.assert(
      fc.property(engine, layout => {
        for (const one of cylindersOf(layout)) {
          for (const other of neighbours(layout, one)) {
            expect(neighbours(layout, other)).toContain(one)
            expect(bankMates(layout, one)).toContain(other)
          }
          for (const mate of bankMates(layout, one)) {
            expect(bankMates(layout, mate)).toContain(one)
            expect(bankOf(layout, mate)).toBe(bankOf(layout, one))
          }
        }
      }),
    )
  })
  it('give two neighbours to every cylinder but those at an end', () => {
    fc.assert(
      fc.property(engine, layout => {
        for (const one of cylindersOf(layout)) {
          const row = bankOf(layout, one)?.cylinders.length
          expect(neighbours(layout, one).length).toBe(row === 1 ? 0 : isEnd(layout, one) ? 1 : 2)
          expect(bankMates(layout, one).length).toBe((row ?? 0) - 1)
        }
      }),
    )
  })
})

describe('the companion', () => {
  it('is mutual and fires half a cycle away', () => {
    fc.assert(
      fc.property(engine, layout => {
        const pairs = cylindersOf(layout).flatMap(one => {
          const other = companion(layout, one)
          return other === null ? [] : [{ one, other }]
        })
        for (const { one, other } of pairs) {
          expect(other).not.toBe(one)
          expect(companion(layout, other)).toBe(one)
          const apart = Math.abs((fireAngle(layout, one) ?? 0) - (fireAngle(layout, other) ?? 0))
          expect(apart).toBeCloseTo(360, 6)
        }
      }),
    )
  })
  const withCompanion = (layout: Layout) =>
    cylindersOf(layout).filter(one => companion(layout, one) !== null).length
  const odd = builtInLayouts.filter(layout => layout.firingOrder.length % 2 === 1)
  const evenFire = builtInLayouts.filter(
    layout => !odd.includes(layout) && new Set(layout.intervalsDeg).size === 1,
  )
  it.each(odd.map(layout => [layout.name, layout] as const))(
    'is missing with an odd count: %s',
    (_, layout) => {
      expect(withCompanion(layout)).toBe(0)
    },
  )
  it.each(evenFire.map(layout => [layout.name, layout] as const))(
    'is there for every cylinder with an even count and even firing: %s',
    (_, layout) => {
      expect(withCompanion(layout)).toBe(layout.firingOrder.length)
    },
  )
  it('is left open where two cylinders fire at once', () => {
    const four = layoutById('i4-1342')
    if (!four) throw new Error('no inline four')
    const together = { ...four, firingOrder: [1, 4, 2, 3], intervalsDeg: [0, 360, 180, 180] }
    expect(cylindersOf(together).map(one => companion(together, one))).toEqual([null, null, null, null])
  })
})

describe('the firing order', () => {
  it('has before and after undo each other, and comes round to every cylinder', () => {
    fc.assert(
      fc.property(engine, layout => {
        fc.pre(layout.firingOrder.length > 1)
        const first = layout.firingOrder[0] ?? 0
        const walked = layout.firingOrder.reduce<number[]>(
          path => [...path, firingSuccessor(layout, path.at(-1) ?? 0) ?? 0],
          [first],
        )
        expect(walked).toEqual([...layout.firingOrder, first])
        for (const one of cylindersOf(layout))
          expect(firingPredecessor(layout, firingSuccessor(layout, one) ?? 0)).toBe(one)
      }),
    )
  })
  it('has no before and after with a single cylinder', () => {
    const single = layoutById('single')
    if (!single) throw new Error('no single cylinder')
    expect([firingPredecessor(single, 1), firingSuccessor(single, 1)]).toEqual([null, null])
  })
  it('gives rising angles, from 0 to less than a cycle', () => {
    fc.assert(
      fc.property(engine, layout => {
        const angles = layout.firingOrder.map(one => fireAngle(layout, one) ?? Number.NaN)
        expect(angles[0]).toBe(0)
        expect(angles.every((angle, i) => angle >= (angles[i - 1] ?? 0) && angle < 720)).toBe(true)
      }),
    )
  })
})

it('say nothing of a cylinder that the engine lacks', () => {
  fc.assert(
    fc.property(engine, layout => {
      expect(neighbours(layout, 17)).toEqual([])
      expect(bankMates(layout, 17)).toEqual([])
      expect(bankOf(layout, 17)).toBeUndefined()
      expect(isEnd(layout, 17)).toBe(false)
      for (const relation of [companion, fireAngle, firingPredecessor, firingSuccessor])
        expect(relation(layout, 17)).toBeNull()
    }),
  )
})

it('do not depend on the number of plugs', () => {
  for (const layout of builtInLayouts) {
    const twin = withPlugsPerCylinder(layout, 2)
    for (const one of cylindersOf(layout)) expect(companion(twin, one)).toBe(companion(layout, one))
    expect(cylindersOf(twin)).toEqual(cylindersOf(layout))
  }
})

// Layouts against published firing orders (source named in data/firing-orders.json): every engine kept there has a
// built-in layout, and companions, neighbours, ends and firing neighbours come out as the table has them.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { builtInLayouts } from '../../shared/engine/layouts.ts'
import type { Layout } from '../../shared/engine/layout-schema.ts'
import {
  bankMates,
  companion,
  cylindersOf,
  fireAngle,
  firingPredecessor,
  firingSuccessor,
  isEnd,
  neighbours,
} from '../../shared/engine/relations.ts'
import { published } from './published.ts'

const pairs = z.array(z.tuple([z.number(), z.number()]))
const table = published(
  'firing-orders',
  z.object({
    layouts: z.array(
      z.object({
        id: z.string(),
        banks: z.record(z.string(), z.array(z.number())),
        adjacent_pairs: pairs,
        end_cylinders: z.array(z.number()),
        orders: z.array(
          z.object({
            order: z.array(z.number()),
            fire_angle_deg: z.record(z.string(), z.number()),
            companion_pairs: pairs,
            distribution_neighbours: z.record(z.string(), z.array(z.number())),
          }),
        ),
      }),
    ),
  }),
)

const rows = table.layouts.flatMap(engine => engine.orders.map(order => ({ engine, order })))

const find = (engineId: string, order: number[]): Layout => {
  const found = builtInLayouts.find(
    layout =>
      (layout.id === engineId || layout.id.startsWith(`${engineId}-`)) &&
      layout.firingOrder.join() === order.join(),
  )
  if (!found) throw new Error(`no built-in layout for ${engineId} ${order.join('-')}`)
  return found
}

const asKeys = (list: number[][]): string[] =>
  list.map(pair => pair.toSorted((a, b) => a - b).join('-')).toSorted()

describe('built-in layouts against the published table', () => {
  it('have one layout for each published order and no other', () => {
    expect(builtInLayouts.length).toBe(rows.length)
    expect(new Set(builtInLayouts.map(layout => layout.id)).size).toBe(rows.length)
  })

  it.each(rows.map(row => [`${row.engine.id} ${row.order.order.join('-')}`, row] as const))(
    '%s',
    (_, row) => {
      const { engine, order } = row
      const layout = find(engine.id, order.order)
      const cylinders = cylindersOf(layout)
      expect(layout.banks.map(bank => bank.cylinders)).toEqual(Object.values(engine.banks))
      for (const cylinder of cylinders)
        expect(fireAngle(layout, cylinder)).toBeCloseTo(
          order.fire_angle_deg[String(cylinder)] ?? Number.NaN,
          1,
        )

      const companions = cylinders.flatMap(a => {
        const b = companion(layout, a)
        return b !== null && a < b ? [[a, b]] : []
      })
      expect(asKeys(companions)).toEqual(asKeys(order.companion_pairs))

      const adjacent = cylinders.flatMap(a => neighbours(layout, a).flatMap(b => (a < b ? [[a, b]] : [])))
      expect(asKeys(adjacent)).toEqual(asKeys(engine.adjacent_pairs))

      expect(cylinders.filter(one => isEnd(layout, one)).toSorted((a, b) => a - b)).toEqual(
        engine.end_cylinders.toSorted((a, b) => a - b),
      )
      for (const [cylinder, expected] of Object.entries(order.distribution_neighbours))
        expect([
          firingPredecessor(layout, Number(cylinder)),
          firingSuccessor(layout, Number(cylinder)),
        ]).toEqual(expected)
      for (const one of cylinders)
        expect([...bankMates(layout, one), one].length).toBe(
          layout.banks.find(bank => bank.cylinders.includes(one))?.cylinders.length,
        )
    },
  )
})

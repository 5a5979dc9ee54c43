// Arrow keys reach every bore of every engine, and left undoes right.
import { expect, it } from 'vitest'
import { deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import { builtInLayouts, withPlugsPerCylinder } from '../../../shared/engine/layouts.ts'
import { slotKey } from '../../../shared/engine/slots.ts'
import { boreTowards } from './bore-towards.ts'

const arrows = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']

it.each(
  builtInLayouts
    .flatMap(layout => [layout, withPlugsPerCylinder(layout, 2)])
    .map(layout => [layout.name, layout] as const),
)('reaches every plug of %s', (_, layout) => {
  const { bores } = deckGeometry(layout)
  const reached = new Set(bores.slice(0, 1))
  for (const bore of reached)
    for (const key of arrows) {
      const next = boreTowards(bores, bore, key)
      if (next) reached.add(next)
    }
  expect([...reached].map(slotKey).toSorted()).toEqual(bores.map(slotKey).toSorted())
})

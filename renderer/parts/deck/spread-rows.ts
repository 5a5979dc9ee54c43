// An upright drawing with room under each cylinder for words: every row moves down by what stands above it.
import type { DeckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'

/** `room` in drawing units is added under each cylinder. */
export function spreadRows(layout: Layout, deck: DeckGeometry, room: number): DeckGeometry {
  const top = new Map(deck.cylinders.map(one => [one.cylinder, one.y]))
  const above = (cylinder: number): number => {
    const mates = layout.banks.find(bank => bank.cylinders.includes(cylinder))?.cylinders ?? []
    const own = top.get(cylinder) ?? 0
    return mates.filter(mate => (top.get(mate) ?? 0) < own).length
  }
  const moved = <T extends { cylinder: number; y: number }>(thing: T): T => ({
    ...thing,
    y: thing.y + above(thing.cylinder) * room,
  })
  const rows = layout.banks.map(bank => bank.cylinders.length)
  return {
    ...deck,
    height: deck.height + Math.max(...rows) * room,
    bores: deck.bores.map(moved),
    cylinders: deck.cylinders.map(moved),
    firingPath: deck.firingPath.map(moved),
    banks: deck.banks.map((bank, at) => ({ ...bank, height: bank.height + (rows[at] ?? 0) * room })),
    front:
      deck.front.side === 'bottom'
        ? { ...deck.front, y: deck.front.y + Math.max(...rows) * room }
        : deck.front,
  }
}

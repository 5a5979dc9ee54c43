// The bore that an arrow key leads to: the nearest one that lies in that direction on the drawing.
import type { Bore } from '../../../shared/engine/deck-geometry.ts'

const directions: Readonly<Record<string, [x: number, y: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** Undefined for other keys and at the edge. */
export function boreTowards(bores: readonly Bore[], from: Bore, key: string): Bore | undefined {
  const direction = directions[key]
  if (!direction) return undefined
  const [dx, dy] = direction
  const ranked = bores
    .map(bore => {
      const along = (bore.x - from.x) * dx + (bore.y - from.y) * dy
      const aside = Math.abs((bore.x - from.x) * dy) + Math.abs((bore.y - from.y) * dx)
      return { bore, along, cost: along + 2 * aside }
    })
    // Neither behind nor more beside than ahead.
    .filter(one => one.along > 1 && one.cost < 3 * one.along + 1)
    .toSorted((a, b) => a.cost - b.cost)
  return ranked[0]?.bore
}

// The firing order drawn on the deck: a closed path from cylinder to cylinder, each with its place in the order.
import type { DeckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { DeckPlaces } from './deck-places.ts'

type FiringPathProps = { deck: DeckGeometry; places: DeckPlaces }

export function FiringPath({ deck, places: { scale, x, y } }: FiringPathProps) {
  const points = deck.firingPath.map(point => ({
    cylinder: point.cylinder,
    x: x + point.x * scale,
    y: y + point.y * scale,
  }))
  const line = [...points, ...points.slice(0, 1)].map(point => `${point.x},${point.y}`).join(' ')
  return (
    <svg className="firing" aria-hidden="true">
      <polyline className="firing-halo" points={line} />
      <polyline className="firing-line" points={line} />
      {points.map((point, at) => (
        <g key={point.cylinder} transform={`translate(${point.x} ${point.y})`}>
          <circle r={13} />
          <text y={5}>{at + 1}</text>
        </g>
      ))}
    </svg>
  )
}

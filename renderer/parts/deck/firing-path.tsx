// The firing order drawn on the deck: a closed path along the inner edge of the cylinders, each with its place in the
// order, so that the plugs' pictures stay in sight.
import type { DeckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { DeckPlaces } from './deck-places.ts'

type FiringPathProps = { deck: DeckGeometry; places: DeckPlaces }

/** How far from the middle of a bore towards its inner edge, in drawing units. */
const inwards = 34

const steps = {
  left: { x: inwards, y: 0 },
  right: { x: -inwards, y: 0 },
  top: { x: 0, y: inwards },
  bottom: { x: 0, y: -inwards },
} as const

export function FiringPath({ deck, places: { scale, x, y, callouts } }: FiringPathProps) {
  const points = deck.firingPath.map(point => {
    // Inner is where the callout is not.
    const step = steps[callouts.find(one => one.cylinder === point.cylinder)?.side ?? 'right']
    return {
      cylinder: point.cylinder,
      x: x + (point.x + step.x) * scale,
      y: y + (point.y + step.y) * scale,
    }
  })
  const line = [...points, ...points.slice(0, 1)].map(point => `${point.x},${point.y}`).join(' ')
  return (
    <svg className="firing" aria-hidden="true">
      <polyline className="firing-halo" points={line} />
      <polyline className="firing-line" points={line} />
      {points.map((point, at) => (
        <g key={point.cylinder} transform={`translate(${point.x} ${point.y})`}>
          <circle r={11} />
          <text y={4.5}>{at + 1}</text>
        </g>
      ))}
    </svg>
  )
}

// The firing order drawn on the deck: a closed path along the inner edge of the cylinders, each with its place in the
// order, so that the plugs' pictures and the callouts stay in sight.
import type { DeckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { DeckPlaces } from './deck-places.ts'

export function FiringPath({ places: { deck, scale, x, y } }: { places: DeckPlaces }) {
  const points = deck.firingPath.map(point => {
    const step = inwards(point, deck)
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

/** From the middle of a cylinder to its edge towards the other bank, in drawing units; to the left with one bank. */
function inwards(middle: { cylinder: number; x: number; y: number }, deck: DeckGeometry) {
  const cylinder = deck.cylinders.find(one => one.cylinder === middle.cylinder)
  const half = { x: (cylinder?.width ?? 0) / 2 - 6, y: (cylinder?.height ?? 0) / 2 - 6 }
  const mean = (pick: (bank: DeckGeometry['banks'][number]) => number) =>
    deck.banks.reduce((sum, bank) => sum + pick(bank), 0) / deck.banks.length
  const lying = deck.front.side === 'left' || deck.front.side === 'right'
  if (lying) return { x: 0, y: middle.y < mean(bank => bank.y + bank.height / 2) - 1 ? half.y : -half.y }
  return { x: middle.x < mean(bank => bank.x + bank.width / 2) - 1 ? half.x : -half.x, y: 0 }
}

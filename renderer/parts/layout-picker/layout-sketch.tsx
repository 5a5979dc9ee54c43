// An engine in small: its bores and numbers, to pick it by.
import { deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { slotKey } from '../../../shared/engine/slots.ts'

export function LayoutSketch({ layout }: { layout: Layout }) {
  const deck = deckGeometry(layout)
  return (
    <svg className="layout-sketch" viewBox={`0 0 ${deck.width} ${deck.height}`} aria-hidden="true">
      {deck.banks.map(bank => (
        <rect key={bank.name} x={bank.x} y={bank.y} width={bank.width} height={bank.height} rx={14} />
      ))}
      {deck.bores.map(bore => (
        <g key={slotKey(bore)} transform={`translate(${bore.x} ${bore.y})`}>
          <circle r={bore.r} />
          <text y={14}>{slotKey(bore)}</text>
        </g>
      ))}
    </svg>
  )
}

// An engine in small: its bores and numbers with the front marked, to pick it by.
import { deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { slotKey } from '../../../shared/engine/slots.ts'

export function LayoutSketch({ layout }: { layout: Layout }) {
  const deck = deckGeometry(layout)
  const turn = { top: 0, right: 90, bottom: 180, left: -90 }[layout.front]
  return (
    <svg className="layout-sketch" viewBox={`0 0 ${deck.width} ${deck.height}`} aria-hidden="true">
      <path
        d="M -16 9 L 0 -11 L 16 9 Z"
        transform={`translate(${deck.front.x} ${deck.front.y}) rotate(${turn})`}
      />
      {deck.banks.map(bank => (
        <rect key={bank.name} x={bank.x} y={bank.y} width={bank.width} height={bank.height} rx={14} />
      ))}
      {deck.bores.map(bore => (
        <g key={slotKey(bore)} transform={`translate(${bore.x} ${bore.y})`}>
          <circle r={bore.r} />
          <text y={bore.r * 0.35}>{slotKey(bore)}</text>
        </g>
      ))}
    </svg>
  )
}

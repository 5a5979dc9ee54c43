// The engine in small, lying with its front to the left: only the state of each cylinder, for a line of a list.
import { useMemo } from 'react'
import type { State } from '../../../shared/diagnosis/condition-map.ts'
import { deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { StateMark } from '../state-glyph.tsx'
import './mini-deck.css'

type MiniDeckProps = { layout: Layout; states: ReadonlyMap<number, State> }

export function MiniDeck({ layout, states }: MiniDeckProps) {
  const deck = useMemo(() => deckGeometry({ ...layout, plugsPerCylinder: 1, front: 'left' }), [layout])
  return (
    <svg className="mini-deck" viewBox={`0 0 ${deck.width} ${deck.height}`} aria-hidden="true">
      {deck.banks.map(bank => (
        <rect key={bank.name} x={bank.x} y={bank.y} width={bank.width} height={bank.height} rx={18} />
      ))}
      {deck.bores.map(bore => (
        <g key={bore.cylinder} transform={`translate(${bore.x} ${bore.y})`}>
          <StateMark state={states.get(bore.cylinder) ?? 'unknown'} radius={34} />
        </g>
      ))}
    </svg>
  )
}

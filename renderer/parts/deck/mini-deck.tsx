// The engine in small, lying with its front to the left: only the state of each cylinder, for a line of a list.
import { useMemo } from 'react'
import type { State } from '../../../shared/diagnosis/condition-map.ts'
import { deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { StateMark } from '../state-glyph.tsx'
import './mini-deck.css'

/** Pixels per drawing unit: the same for all, so that engines compare by eye. */
const scale = 0.21
const margin = 6

type MiniDeckProps = { layout: Layout; states: ReadonlyMap<number, State> }

export function MiniDeck({ layout, states }: MiniDeckProps) {
  const deck = useMemo(() => deckGeometry({ ...layout, plugsPerCylinder: 1, front: 'left' }), [layout])
  const left = Math.min(...deck.banks.map(bank => bank.x)) - margin
  const top = Math.min(...deck.banks.map(bank => bank.y)) - margin
  const width = Math.max(...deck.banks.map(bank => bank.x + bank.width)) + margin - left
  const height = Math.max(...deck.banks.map(bank => bank.y + bank.height)) + margin - top
  return (
    <svg
      className="mini-deck"
      viewBox={`${left} ${top} ${width} ${height}`}
      width={width * scale}
      height={height * scale}
      aria-hidden="true"
    >
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

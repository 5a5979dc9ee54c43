// The deck: the engine from above, each bore with its plug's picture and state, and the way around a job.
import { type KeyboardEvent, useMemo, useState } from 'react'
import type { CylinderState, State } from '../../../shared/diagnosis/condition-map.ts'
import { type Bore, deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { sameSlot, slotKey, slotLabel } from '../../../shared/engine/slots.ts'
import type { SlotAddress } from '../../../shared/job/command-schema.ts'
import { usePhoto } from '../../api/use-photo.ts'
import { StateMark } from '../state-glyph.tsx'
import { boreTowards } from './bore-towards.ts'
import './deck.css'

type DeckProps = {
  layout: Layout
  states: readonly CylinderState[]
  /** Photo of a plug, by SHA-256. */
  photoOf: (slot: SlotAddress) => string | undefined
  selected: readonly SlotAddress[]
  onSelect: (slot: SlotAddress, how: 'only' | 'toggle') => void
  showFiring: boolean
}

export function Deck({ layout, states, photoOf, selected, onSelect, showFiring }: DeckProps) {
  const deck = useMemo(() => deckGeometry(layout), [layout])
  const stateOf = new Map(states.map(one => [one.cylinder, one]))
  const last = selected.at(-1)
  const [focusable, setFocusable] = useState<string>()
  const tabStop = focusable ?? slotKey(last ?? deck.bores[0] ?? { cylinder: 1 })

  const onKeyDown = (event: KeyboardEvent<SVGGElement>, bore: Bore) => {
    const next = boreTowards(deck.bores, bore, event.key)
    if (event.key === 'Enter' || event.key === ' ')
      onSelect(bore, event.ctrlKey || event.metaKey ? 'toggle' : 'only')
    else if (next) {
      setFocusable(slotKey(next))
      onSelect(next, 'only')
      event.currentTarget.ownerSVGElement
        ?.querySelector<SVGGElement>(`[data-bore="${slotKey(next)}"]`)
        ?.focus()
    } else return
    event.preventDefault()
  }

  return (
    <svg
      className="deck"
      viewBox={`0 0 ${deck.width} ${deck.height}`}
      role="group"
      aria-label={`Deck, ${layout.name}`}
    >
      {deck.banks.map(bank => (
        <g key={bank.name}>
          <rect className="deck-bank" x={bank.x} y={bank.y} width={bank.width} height={bank.height} rx={14} />
          {deck.banks.length > 1 && (
            <text className="deck-bank-name" x={bank.x + bank.width / 2} y={bank.y - 5}>
              {bank.name}
            </text>
          )}
        </g>
      ))}
      {layout.plugsPerCylinder === 2 &&
        deck.cylinders.map(one => (
          <rect
            key={one.cylinder}
            className="deck-cylinder"
            x={one.x}
            y={one.y}
            width={one.width}
            height={one.height}
            rx={Math.min(one.width, one.height) / 2}
          />
        ))}
      <FrontMark deck={deck} />
      {deck.bores.map(bore => {
        const state = stateOf.get(bore.cylinder)
        return (
          // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role -- an SVG group cannot be a button element
          <g
            key={slotKey(bore)}
            data-bore={slotKey(bore)}
            className="deck-bore"
            role="button"
            tabIndex={slotKey(bore) === tabStop ? 0 : -1}
            aria-pressed={selected.some(one => sameSlot(one, bore))}
            aria-label={`${slotLabel(bore)}: ${state?.state ?? 'unknown'}, ${state?.headline ?? ''}`}
            transform={`translate(${bore.x} ${bore.y})`}
            onClick={event =>
              onSelect(addressOf(bore), event.ctrlKey || event.metaKey || event.shiftKey ? 'toggle' : 'only')
            }
            onFocus={() => setFocusable(slotKey(bore))}
            onKeyDown={event => onKeyDown(event, bore)}
          >
            <BoreFace bore={bore} photo={photoOf(addressOf(bore))} state={state?.state ?? 'unknown'} />
          </g>
        )
      })}
      <g className="deck-labels" aria-hidden="true">
        {deck.bores.map(bore => (
          <BoreLabel key={slotKey(bore)} bore={bore} state={stateOf.get(bore.cylinder)?.state ?? 'unknown'} />
        ))}
      </g>
      {showFiring && <FiringPath path={deck.firingPath} />}
    </svg>
  )
}

const addressOf = (bore: Bore): SlotAddress =>
  bore.plug ? { cylinder: bore.cylinder, plug: bore.plug } : { cylinder: bore.cylinder }

function BoreFace({ bore, photo, state }: { bore: Bore; photo: string | undefined; state: State }) {
  const { url } = usePhoto(photo, 'thumb')
  const clip = `bore-${slotKey(bore)}`
  const { r } = bore
  return (
    <>
      <clipPath id={clip}>
        <circle r={r - 2} />
      </clipPath>
      <circle className="deck-hole" r={r} data-state={state} />
      {url && (
        <image
          href={url}
          x={-r * 1.35}
          y={-r * 1.05}
          width={r * 2.7}
          height={r * 2.1}
          preserveAspectRatio="xMidYMid slice"
          clipPath={`url(#${clip})`}
        />
      )}
      <circle className="deck-ring" r={r} data-state={state} />
    </>
  )
}

/** Number and state, drawn over the bores: the bore's own name says both already. */
function BoreLabel({ bore, state }: { bore: Bore; state: State }) {
  const { r } = bore
  return (
    <g transform={`translate(${bore.x} ${bore.y})`}>
      <g className="deck-number" transform={`translate(${-r * 0.74} ${-r * 0.74})`}>
        <circle r={13} />
        <text y={5}>{slotKey(bore)}</text>
      </g>
      <g className="deck-state" data-state={state} transform={`translate(0 ${r - 4})`}>
        <rect x={-36} y={-11} width={72} height={22} rx={11} />
        <g transform="translate(-24 0)">
          <StateMark state={state} radius={6} />
        </g>
        <text x={6} y={4.5}>
          {state}
        </text>
      </g>
    </g>
  )
}

function FrontMark({ deck }: { deck: ReturnType<typeof deckGeometry> }) {
  const turn = { top: 0, right: 90, bottom: 180, left: -90 }[deck.front.side]
  return (
    <g className="deck-front" transform={`translate(${deck.front.x} ${deck.front.y})`}>
      <path d="M -9 5 L 0 -7 L 9 5 Z" transform={`rotate(${turn}) translate(-24 0)`} />
      <text x={turn === 0 || turn === 180 ? 4 : 0} y={turn === 0 || turn === 180 ? 4 : 26}>
        front
      </text>
    </g>
  )
}

function FiringPath({ path }: { path: ReturnType<typeof deckGeometry>['firingPath'] }) {
  const points = [...path, ...path.slice(0, 1)]
  return (
    <g className="deck-firing" aria-hidden="true">
      <polyline points={points.map(point => `${point.x},${point.y}`).join(' ')} />
      {path.map((point, at) => (
        <g key={point.cylinder} transform={`translate(${point.x} ${point.y})`}>
          <circle r={12} />
          <text y={5}>{at + 1}</text>
        </g>
      ))}
    </g>
  )
}

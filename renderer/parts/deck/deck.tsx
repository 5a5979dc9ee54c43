// The deck: the engine from above, each bore with its plug's picture, each cylinder with its state, and the way around a
// job. A drawing below, a labelled grid above it: one row a bank, one cell a plug.
import { type KeyboardEvent, type MouseEvent, useMemo, useRef, useState } from 'react'
import type { CylinderState } from '../../../shared/diagnosis/condition-map.ts'
import { type Bore, deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { plugsOf, sameSlot, slotKey, slotLabel } from '../../../shared/engine/slots.ts'
import type { SlotAddress } from '../../../shared/job/command-schema.ts'
import { useFrameSize } from '../photo/use-frame-size.ts'
import { Thumb } from '../photo/thumb.tsx'
import { boreTowards } from './bore-towards.ts'
import { CylinderCallout } from './cylinder-callout.tsx'
import { deckPlaces } from './deck-places.ts'
import './deck.css'
import { EngineDrawing } from './engine-drawing.tsx'
import { FiringPath } from './firing-path.tsx'

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
  const frame = useRef<HTMLDivElement>(null)
  const size = useFrameSize(frame)
  const places = useMemo(() => deckPlaces(layout, deckGeometry(layout), size), [layout, size])
  const { deck } = places
  const [focusable, setFocusable] = useState<string>()
  const stateOf = new Map(states.map(one => [one.cylinder, one]))
  const tabStop = focusable ?? slotKey(selected.at(-1) ?? deck.bores[0] ?? { cylinder: 1 })
  const isSelected = (slot: SlotAddress) => selected.some(one => sameSlot(one, slot))

  const onKeyDown = (event: KeyboardEvent<HTMLElement>, bore: Bore) => {
    const toggles = event.ctrlKey || event.metaKey
    const next = boreTowards(deck.bores, bore, event.key)
    if (event.key === 'Enter' || event.key === ' ') onSelect(addressOf(bore), toggles ? 'toggle' : 'only')
    else if (next) {
      setFocusable(slotKey(next))
      // With Ctrl the focus walks and the selection stays.
      if (!toggles) onSelect(addressOf(next), 'only')
      frame.current?.querySelector<HTMLElement>(`[data-bore="${slotKey(next)}"]`)?.focus()
    } else return
    event.preventDefault()
  }
  const onClick = (event: MouseEvent<HTMLElement>) => {
    const hit = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-slot-key]') : null
    const bore = deck.bores.find(one => slotKey(one) === hit?.dataset.slotKey)
    if (bore) onSelect(addressOf(bore), event.ctrlKey || event.metaKey || event.shiftKey ? 'toggle' : 'only')
  }

  return (
    // oxlint-disable-next-line jsx-a11y/click-events-have-key-events, jsx-a11y/no-static-element-interactions -- the cells inside take the keys
    <div className="deck" ref={frame} onClick={onClick}>
      {size.width > 0 && (
        <>
          <EngineDrawing layout={layout} places={places} />
          <div role="grid" aria-label={`Deck, ${layout.name}`} aria-multiselectable="true">
            {layout.banks.map(bank => (
              <div key={bank.name} role="row" aria-label={bank.name}>
                {deck.bores
                  .filter(bore => bank.cylinders.includes(bore.cylinder))
                  .map(bore => {
                    const key = slotKey(bore)
                    const photo = photoOf(addressOf(bore))
                    const known = stateOf.get(bore.cylinder)
                    return (
                      <div
                        key={key}
                        role="gridcell"
                        className="bore"
                        data-bore={key}
                        data-slot-key={key}
                        data-state={known?.state ?? 'unknown'}
                        tabIndex={key === tabStop ? 0 : -1}
                        aria-selected={isSelected(bore)}
                        aria-label={`${slotLabel(bore)}: ${known?.state ?? 'unknown'}, ${known?.headline ?? ''}`}
                        style={boreBox(bore, places)}
                        onFocus={() => setFocusable(key)}
                        onKeyDown={event => onKeyDown(event, bore)}
                      >
                        {photo ? <Thumb photo={photo} alt="" /> : <span className="bore-number">{key}</span>}
                        {bore.plug && photo && <span className="bore-plug">{bore.plug}</span>}
                      </div>
                    )
                  })}
              </div>
            ))}
          </div>
          <div aria-hidden="true">
            {places.callouts.map(callout => (
              <CylinderCallout
                key={callout.cylinder}
                callout={callout}
                known={stateOf.get(callout.cylinder)}
                slot={slotKey(plugsOf(layout, callout.cylinder)[0] ?? { cylinder: callout.cylinder })}
                selected={selected.some(one => one.cylinder === callout.cylinder)}
              />
            ))}
          </div>
          {showFiring && <FiringPath places={places} />}
        </>
      )}
    </div>
  )
}

const addressOf = (bore: Bore): SlotAddress =>
  bore.plug ? { cylinder: bore.cylinder, plug: bore.plug } : { cylinder: bore.cylinder }

/** Never smaller than a finger-tip can hit, whatever the drawing's scale. */
const leastBore = 26

const boreBox = (bore: Bore, { scale, x, y }: { scale: number; x: number; y: number }) => {
  const size = Math.max(leastBore, 2 * bore.r * scale)
  return {
    left: x + bore.x * scale - size / 2,
    top: y + bore.y * scale - size / 2,
    width: size,
    height: size,
  }
}

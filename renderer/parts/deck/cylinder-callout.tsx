// The words beside a cylinder: its number, the state as glyph and word, and what told most. The grid speaks the same.
import type { CylinderState } from '../../../shared/diagnosis/condition-map.ts'
import { StateWord } from '../state-glyph.tsx'
import type { Callout } from './deck-places.ts'

type CylinderCalloutProps = {
  callout: Callout
  known: CylinderState | undefined
  /** Key of the plug that a press selects. */
  slot: string
  selected: boolean
}

/** Pixels; under this the number stands above the word. */
const tightBelow = 116

export function CylinderCallout({ callout, known, slot, selected }: CylinderCalloutProps) {
  const { cylinder, side, left, top, width, height } = callout
  const state = known?.state ?? 'unknown'
  return (
    <div
      className="callout"
      data-side={side}
      data-slot-key={slot}
      data-selected={selected}
      data-tight={width < tightBelow}
      title={known?.headline}
      style={{ left, top, width, height }}
    >
      <span className="callout-line">
        <span className="callout-number">{cylinder}</span>
        <StateWord state={state} />
      </span>
      {state !== 'unknown' && <span className="callout-words">{known?.headline}</span>}
    </div>
  )
}

// Photos not yet laid out, in capture order: drag them to a slot, send the chosen ones to the selected slot, or fill all.
import { useState } from 'react'
import { slotLabel } from '../../../../shared/engine/slots.ts'
import { inCaptureOrder } from '../../../../shared/job/capture-order.ts'
import type { SlotAddress } from '../../../../shared/job/command-schema.ts'
import type { Shot } from '../../../../shared/job/tray-schema.ts'
import { Button } from '../../../parts/button.tsx'
import { Thumb } from '../../../parts/photo/thumb.tsx'
import { packShots, shotsType, unpackShots } from './drag-payload.ts'
import './unsorted-strip.css'

type UnsortedStripProps = {
  shots: readonly Shot[]
  target: SlotAddress | undefined
  readOnly: boolean
  onFillSlots: () => void
  onMove: (shots: string[], to: SlotAddress | null) => void
  onRemove: (shots: string[]) => void
}

const time = (shot: Shot): string => shot.takenAt?.local.slice(11) ?? 'no time'

export function UnsortedStrip({
  shots,
  target,
  readOnly,
  onFillSlots,
  onMove,
  onRemove,
}: UnsortedStripProps) {
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set())
  const ordered = inCaptureOrder(shots)
  const picked = ordered.filter(shot => chosen.has(shot.id)).map(shot => shot.id)
  const toggle = (id: string) =>
    setChosen(now => (now.has(id) ? new Set([...now].filter(one => one !== id)) : new Set([...now, id])))

  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- a drop target; buttons inside do the same
    <section
      className="unsorted"
      aria-label="Unsorted photos"
      onDragOver={event => event.preventDefault()}
      onDrop={event => {
        const back = unpackShots(event.dataTransfer.getData(shotsType))
        if (back.length === 0 || readOnly) return
        event.preventDefault()
        event.stopPropagation()
        onMove(back, null)
      }}
    >
      <header>
        <h3>
          Unsorted <span className="quiet">{shots.length} in capture order</span>
        </h3>
        <Button
          isDisabled={readOnly || !target || picked.length === 0}
          onPress={() => {
            if (target) onMove(picked, target)
            setChosen(new Set())
          }}
        >
          {target ? `Put ${picked.length || 'chosen'} in ${slotLabel(target)}` : 'Put chosen in a slot'}
        </Button>
        <Button
          isDisabled={readOnly || picked.length === 0}
          onPress={() => {
            onRemove(picked)
            setChosen(new Set())
          }}
        >
          Take out of the job
        </Button>
        <Button kind="main" isDisabled={readOnly || shots.length === 0} onPress={onFillSlots}>
          Fill slots
        </Button>
      </header>
      <ul>
        {ordered.map(shot => (
          <li key={shot.id}>
            <button
              type="button"
              aria-pressed={chosen.has(shot.id)}
              aria-label={`${shot.fileName}, ${time(shot)}`}
              draggable={!readOnly}
              onClick={() => toggle(shot.id)}
              onDragStart={event =>
                event.dataTransfer.setData(shotsType, packShots(chosen.has(shot.id) ? picked : [shot.id]))
              }
            >
              <Thumb photo={shot.photo} alt="" />
              <span>{time(shot)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

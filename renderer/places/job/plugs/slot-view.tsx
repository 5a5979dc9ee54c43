// The chosen plug: its photo large, its shots as a filmstrip, and what is known of the shot.
import { useState } from 'react'
import { slotLabel } from '../../../../shared/engine/slots.ts'
import type { SlotAddress } from '../../../../shared/job/command-schema.ts'
import type { Slot } from '../../../../shared/job/tray-schema.ts'
import { shotKinds } from '../../../../shared/plug/condition.ts'
import { Button } from '../../../parts/button.tsx'
import { PhotoViewer } from '../../../parts/photo/photo-viewer.tsx'
import { Thumb } from '../../../parts/photo/thumb.tsx'
import { fitView, type View } from '../../../parts/photo/view.ts'
import { useJobPage } from '../job-context.ts'
import { packShots, shotsType } from './drag-payload.ts'

export function SlotView({ slot, address }: { slot: Slot; address: SlotAddress }) {
  const { tray, apply, readOnly } = useJobPage()
  const [shotId, setShotId] = useState<string>()
  // Kept from plug to plug: the next photo opens at the same place and zoom.
  const [view, setView] = useState<View>(fitView)
  const shot = slot.shots.find(one => one.id === shotId) ?? slot.shots[0]
  if (!shot)
    return (
      <div className="slot-view">
        <div className="slot-empty">
          <p>
            No photo of {slotLabel(address)} yet.
            <br />
            Drop one here, or add photos above.
          </p>
        </div>
      </div>
    )
  const facts = [
    shot.fileName,
    `${shot.width} × ${shot.height}`,
    shot.profile ?? 'no colour profile',
    shot.takenAt ? shot.takenAt.local.replace('T', ' ') : 'no capture time',
  ]
  return (
    <div className="slot-view">
      <PhotoViewer
        photo={shot.photo}
        width={shot.width}
        height={shot.height}
        alt={`${slotLabel(address)}, ${shot.kind}, ${tray.name.toLowerCase()}`}
        view={view}
        onView={setView}
      />
      <div>
        <ul className="filmstrip" aria-label={`Shots of ${slotLabel(address)}`}>
          {slot.shots.map(one => (
            <li key={one.id}>
              <button
                type="button"
                aria-pressed={one.id === shot.id}
                aria-label={`${one.kind}, ${one.fileName}`}
                draggable={!readOnly}
                onClick={() => setShotId(one.id)}
                onDragStart={event => event.dataTransfer.setData(shotsType, packShots([one.id]))}
              >
                <Thumb photo={one.photo} alt="" />
                <span>{one.kind}</span>
              </button>
            </li>
          ))}
        </ul>
        <div className="shot-facts">
          <span className="quiet">{facts.join(' · ')}</span>
          <label>
            <span className="visually-hidden">Kind of shot</span>
            <select
              value={shot.kind}
              disabled={readOnly}
              onChange={event => {
                const kind = shotKinds.find(one => one === event.target.value)
                if (kind) void apply({ command: 'set shot kind', trayId: tray.id, shots: [shot.id], kind })
              }}
            >
              {shotKinds.map(kind => (
                <option key={kind}>{kind}</option>
              ))}
            </select>
          </label>
          <Button
            isDisabled={readOnly}
            onPress={() => void apply({ command: 'move shots', trayId: tray.id, shots: [shot.id], to: null })}
          >
            Back to unsorted
          </Button>
        </div>
      </div>
    </div>
  )
}

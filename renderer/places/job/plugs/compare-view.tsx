// Two plugs side by side. Zoom and pan are locked together; one side can be pinned while the other steps on.
import { useState } from 'react'
import { slotKey, slotLabel } from '../../../../shared/engine/slots.ts'
import type { SlotAddress } from '../../../../shared/job/command-schema.ts'
import { currentReading, findSlot } from '../../../../shared/job/current.ts'
import type { Tray } from '../../../../shared/job/tray-schema.ts'
import { Button } from '../../../parts/button.tsx'
import { Dialog } from '../../../parts/dialog.tsx'
import { PhotoViewer } from '../../../parts/photo/photo-viewer.tsx'
import { fitView, type View } from '../../../parts/photo/view.ts'
import { useJobPage } from '../job-context.ts'

type CompareViewProps = { tray: Tray; left: SlotAddress; right: SlotAddress; onClose: () => void }
type Side = { trayId: string; slot: SlotAddress }

export function CompareView({ tray, left, right, onClose }: CompareViewProps) {
  const [sides, setSides] = useState<[Side, Side]>([
    { trayId: tray.id, slot: left },
    { trayId: tray.id, slot: right },
  ])
  const [views, setViews] = useState<[View, View]>([fitView, fitView])
  const [locked, setLocked] = useState(true)
  const look = (side: 0 | 1, view: View) =>
    setViews(now => (locked ? [view, view] : side === 0 ? [view, now[1]] : [now[0], view]))
  return (
    <Dialog title="Side by side" wide onClose={onClose}>
      <label className="check">
        <input
          type="checkbox"
          checked={locked}
          onChange={event => {
            setLocked(event.target.checked)
            if (event.target.checked) setViews(now => [now[0], now[0]])
          }}
        />
        Zoom and move both together
      </label>
      <div className="compare">
        {([0, 1] as const).map(at => (
          <ComparedPlug
            key={at}
            name={at === 0 ? 'left' : 'right'}
            side={sides[at]}
            onSide={side => setSides(now => (at === 0 ? [side, now[1]] : [now[0], side]))}
            view={views[at]}
            onView={view => look(at, view)}
          />
        ))}
      </div>
      <div className="dialog-buttons">
        <Button onPress={onClose}>Close</Button>
      </div>
    </Dialog>
  )
}

type ComparedPlugProps = {
  name: string
  side: Side
  onSide: (side: Side) => void
  view: View
  onView: (view: View) => void
}

/** Each side can show any plug of any tray: one stays, the other steps. */
function ComparedPlug({ name, side, onSide, view, onView }: ComparedPlugProps) {
  const { job, order } = useJobPage()
  const tray = job.trays.find(one => one.id === side.trayId) ?? job.trays[0]
  const slot = tray && findSlot(tray, side.slot)
  const shot = slot?.shots[0]
  const choices = job.trays.flatMap(one =>
    order.map(address => ({ trayId: one.id, slot: address, label: `${one.name}: ${slotLabel(address)}` })),
  )
  const key = (one: Side) => `${one.trayId} ${slotKey(one.slot)}`
  return (
    <div>
      <div className="row">
        <label className="field grow">
          <span className="visually-hidden">Plug on the {name}</span>
          <select
            value={key(side)}
            onChange={event => {
              const found = choices.find(one => key(one) === event.target.value)
              if (found) onSide({ trayId: found.trayId, slot: found.slot })
            }}
          >
            {choices.map(one => (
              <option key={key(one)} value={key(one)}>
                {one.label}
              </option>
            ))}
          </select>
        </label>
        <span>{slot ? (currentReading(slot)?.condition ?? 'not read') : ''}</span>
      </div>
      {shot ? (
        <PhotoViewer
          photo={shot.photo}
          width={shot.width}
          height={shot.height}
          alt={`${slotLabel(side.slot)}, ${shot.kind}`}
          view={view}
          onView={onView}
        />
      ) : (
        <p className="slot-empty">No photo of {slotLabel(side.slot)}.</p>
      )}
    </div>
  )
}

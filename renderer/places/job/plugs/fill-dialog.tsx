// "Fill slots": shows before anything moves which photo would go to which plug, what is missing and what is left over.
import { useId, useMemo, useState } from 'react'
import { sameSlot, slotKey, slotLabel } from '../../../../shared/engine/slots.ts'
import { cylindersOf } from '../../../../shared/engine/relations.ts'
import type { Layout } from '../../../../shared/engine/layout-schema.ts'
import { type FillOrder, type FillPlan, planFill, slotOrder } from '../../../../shared/job/fill-plan.ts'
import type { Shot } from '../../../../shared/job/tray-schema.ts'
import { Button } from '../../../parts/button.tsx'
import { Dialog } from '../../../parts/dialog.tsx'
import { Thumb } from '../../../parts/photo/thumb.tsx'
import './fill-dialog.css'

type FillDialogProps = {
  layout: Layout
  shots: readonly Shot[]
  onFill: (plan: FillPlan) => void
  onClose: () => void
}

export function FillDialog({ layout, shots, onFill, onClose }: FillDialogProps) {
  const id = useId()
  const [order, setOrder] = useState<FillOrder>('cylinder')
  const [start, setStart] = useState(() => Math.min(...cylindersOf(layout)))
  const [grouping, setGrouping] = useState<'count' | 'time'>('count')
  const [perSlot, setPerSlot] = useState(1)
  const [gapSeconds, setGapSeconds] = useState(30)
  const slots = useMemo(() => slotOrder(layout, order, start), [layout, order, start])
  const plan = useMemo(
    () => planFill({ shots, slots, ...(grouping === 'count' ? { perSlot } : { gapSeconds }) }),
    [shots, slots, grouping, perSlot, gapSeconds],
  )
  const shotById = new Map(shots.map(shot => [shot.id, shot]))

  return (
    <Dialog title="Fill slots" onClose={onClose}>
      <form
        className="fill-form"
        onSubmit={event => {
          event.preventDefault()
          onFill(plan)
        }}
      >
        <fieldset>
          <legend>The plugs were photographed in</legend>
          {(['cylinder', 'firing'] as const).map(one => (
            <label key={one}>
              <input
                type="radio"
                name={`${id}-order`}
                checked={order === one}
                onChange={() => setOrder(one)}
              />
              {one === 'cylinder' ? 'cylinder order' : 'firing order'}
            </label>
          ))}
          <label>
            beginning at cylinder
            <select value={start} onChange={event => setStart(Number(event.target.value))}>
              {cylindersOf(layout)
                .toSorted((a, b) => a - b)
                .map(cylinder => (
                  <option key={cylinder}>{cylinder}</option>
                ))}
            </select>
          </label>
        </fieldset>
        <fieldset>
          <legend>Photos of each plug</legend>
          <label>
            <input
              type="radio"
              name={`${id}-grouping`}
              checked={grouping === 'count'}
              onChange={() => setGrouping('count')}
            />
            always
            <input
              type="number"
              aria-label="Photos of each plug"
              min={1}
              max={20}
              value={perSlot}
              disabled={grouping !== 'count'}
              onChange={event => setPerSlot(Math.max(1, Math.min(20, event.target.valueAsNumber || 1)))}
            />
          </label>
          <label>
            <input
              type="radio"
              name={`${id}-grouping`}
              checked={grouping === 'time'}
              onChange={() => setGrouping('time')}
            />
            next plug after a pause of
            <input
              type="number"
              aria-label="Seconds of pause"
              min={1}
              max={3600}
              value={gapSeconds}
              disabled={grouping !== 'time'}
              onChange={event => setGapSeconds(Math.max(1, Math.min(3600, event.target.valueAsNumber || 1)))}
            />
            seconds
          </label>
        </fieldset>
        <ol className="fill-plan" aria-label="Plan">
          {slots.map(slot => {
            const mine = plan.assignments.filter(({ to }) => sameSlot(to, slot))
            return (
              <li key={slotKey(slot)}>
                <strong>{slotKey(slot)}</strong>
                {mine.length === 0 && <span className="fill-none">no photo</span>}
                {mine.map(({ shot }) => {
                  const found = shotById.get(shot)
                  return found ? (
                    <Thumb key={shot} photo={found.photo} alt={`${found.fileName} to ${slotLabel(slot)}`} />
                  ) : null
                })}
              </li>
            )
          })}
        </ol>
        <p role="status">
          {plan.assignments.length} of {shots.length} photos placed.{' '}
          {plan.missing.length > 0 && `Missing: ${plan.missing.map(slotLabel).join('; ')}. `}
          {plan.leftOver.length > 0 && `Left over: ${plan.leftOver.map(shot => shot.fileName).join(', ')}.`}
        </p>
        <div className="dialog-buttons">
          <Button onPress={onClose}>Cancel</Button>
          <Button type="submit" kind="main" isDisabled={plan.assignments.length === 0}>
            Fill slots
          </Button>
        </div>
      </form>
    </Dialog>
  )
}

// The tray: every slot in cylinder or firing order with its picture and reading; the target of drags, worked by keys too.
import type { KeyboardEvent } from 'react'
import { sameSlot, slotKey, slotLabel } from '../../../../shared/engine/slots.ts'
import type { SlotAddress } from '../../../../shared/job/command-schema.ts'
import { currentReading, findSlot } from '../../../../shared/job/current.ts'
import type { Tray } from '../../../../shared/job/tray-schema.ts'
import { Thumb } from '../../../parts/photo/thumb.tsx'
import { packSlot, shotsType, slotType, unpackShots, unpackSlot } from './drag-payload.ts'
import './tray-grid.css'

type TrayGridProps = {
  tray: Tray
  /** Slots in the order shown. */
  order: readonly SlotAddress[]
  selected: readonly SlotAddress[]
  readOnly: boolean
  onSelect: (slot: SlotAddress, how: 'only' | 'toggle' | 'range') => void
  onDropShots: (shots: string[], to: SlotAddress) => void
  onDropFiles: (files: File[], to: SlotAddress) => void
  onSwap: (a: SlotAddress, b: SlotAddress) => void
}

export function TrayGrid(props: TrayGridProps) {
  const { tray, order, selected, readOnly } = props

  const drop = (data: DataTransfer, to: SlotAddress) => {
    if (readOnly) return
    const shots = unpackShots(data.getData(shotsType))
    const slot = unpackSlot(data.getData(slotType))
    if (shots.length > 0) props.onDropShots(shots, to)
    else if (slot && !sameSlot(slot, to)) props.onSwap(slot, to)
    else if (data.files.length > 0) props.onDropFiles([...data.files], to)
  }

  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
    if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return
    const last = selected.at(-1)
    const at = last ? order.findIndex(slot => sameSlot(slot, last)) : -1
    const next = order[Math.max(0, Math.min(order.length - 1, at + step))]
    if (!next) return
    event.preventDefault()
    props.onSelect(next, event.shiftKey ? 'range' : 'only')
    event.currentTarget.querySelector<HTMLElement>(`[data-slot="${slotKey(next)}"]`)?.focus()
  }

  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- arrows move between the buttons inside
    <ul className="tray-grid" aria-label={`Tray ${tray.name}`} onKeyDown={onKeyDown}>
      {order.map(address => {
        const slot = findSlot(tray, address)
        if (!slot) return null
        const reading = currentReading(slot)
        const cover = slot.shots[0]
        const chosen = selected.some(one => sameSlot(one, address))
        const words = [
          reading?.condition ?? (slot.shots.length > 0 ? 'not read yet' : 'no photo'),
          reading?.details.oilInWell && 'oil in well',
        ].filter(Boolean)
        return (
          <li key={slotKey(address)}>
            <button
              type="button"
              className="tray-slot"
              data-slot={slotKey(address)}
              aria-pressed={chosen}
              draggable={!readOnly}
              onClick={event =>
                props.onSelect(
                  address,
                  event.shiftKey ? 'range' : event.ctrlKey || event.metaKey ? 'toggle' : 'only',
                )
              }
              onDragStart={event => event.dataTransfer.setData(slotType, packSlot(address))}
              onDragOver={event => event.preventDefault()}
              onDrop={event => {
                event.preventDefault()
                event.stopPropagation()
                drop(event.dataTransfer, address)
              }}
            >
              <span className="visually-hidden">
                {`${slotLabel(address)}: ${words.join(', ')}, ${slot.shots.length} photos`}
              </span>
              <span className="tray-number" aria-hidden="true">
                {slotKey(address)}
              </span>
              {cover ? (
                <Thumb photo={cover.photo} alt="" />
              ) : (
                <span className="tray-empty" aria-hidden="true" />
              )}
              <span className="tray-words" aria-hidden="true">
                {words.map(word => (
                  <span key={String(word)}>{word}</span>
                ))}
              </span>
              {slot.shots.length > 1 && (
                <span className="tray-count" aria-hidden="true">
                  {slot.shots.length}
                </span>
              )}
            </button>
          </li>
        )
      })}
    </ul>
  )
}

// The Plugs work area: the tray, the unsorted strip, the chosen plug large with its shots, and its tags.
import { type KeyboardEvent, useState } from 'react'
import { sameSlot, slotLabel } from '../../../../shared/engine/slots.ts'
import type { ReadingChange, SlotAddress } from '../../../../shared/job/command-schema.ts'
import { currentReading, findSlot, findTray } from '../../../../shared/job/current.ts'
import { useSettings } from '../../../api/use-settings.ts'
import { isTyping } from '../../../keys/is-typing.ts'
import { Button } from '../../../parts/button.tsx'
import { useJobPage } from '../job-context.ts'
import { OrderSwitch } from '../order-switch.tsx'
import { CompareView } from './compare-view.tsx'
import { conditionForKey, oilInWellKey } from './condition-keys.ts'
import { FillDialog } from './fill-dialog.tsx'
import { IntakeBar } from './intake-bar.tsx'
import './plugs-panel.css'
import { SlotView } from './slot-view.tsx'
import { TagPanel } from './tag-panel.tsx'
import { TrayGrid } from './tray-grid.tsx'
import { UnsortedStrip } from './unsorted-strip.tsx'
import { useIntake } from './use-intake.ts'

export function PlugsPanel() {
  const { job, tray, selected, select, order, apply, readOnly } = useJobPage()
  const autoAdvance = useSettings()?.autoAdvance ?? true
  const intake = useIntake(job.id, tray.id)
  const [filling, setFilling] = useState(false)
  const [comparing, setComparing] = useState(false)
  const shown = selected.at(-1)
  const slot = shown ? findSlot(tray, shown) : undefined
  const readings = selected.map(one => {
    const found = findSlot(tray, one)
    return found && currentReading(found)
  })
  const title = selected.length === 1 && shown ? capital(slotLabel(shown)) : `${selected.length} plugs`

  const tag = async (change: ReadingChange, advance: boolean) => {
    const done = await apply({ command: 'set reading', trayId: tray.id, slots: [...selected], change })
    const at = shown ? order.findIndex(one => sameSlot(one, shown)) : -1
    const next = order[at + 1]
    if (done && advance && autoAdvance && selected.length === 1 && next) select(next, 'only')
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (
      readOnly ||
      selected.length === 0 ||
      isTyping(event.target) ||
      event.ctrlKey ||
      event.metaKey ||
      event.altKey
    )
      return
    const condition = conditionForKey(event.key)
    if (condition) {
      event.preventDefault()
      void tag({ condition: readings.every(one => one?.condition === condition) ? null : condition }, true)
    } else if (event.key.toLowerCase() === oilInWellKey) {
      event.preventDefault()
      void tag(
        { details: { oilInWell: readings.every(one => one?.details.oilInWell === true) ? null : true } },
        false,
      )
    }
  }
  const move = (shots: string[], to: SlotAddress | null) =>
    void apply({ command: 'move shots', trayId: tray.id, shots, to })
  const [a, b] = selected

  return (
    // oxlint-disable-next-line jsx-a11y/no-static-element-interactions -- single letters tag while focus is inside
    <div
      className="plugs-panel"
      onKeyDown={onKeyDown}
      onDragOver={event => event.preventDefault()}
      onDrop={event => {
        event.preventDefault()
        if (!readOnly) void intake.addDropped(event.dataTransfer)
      }}
      onPaste={event => {
        if (!readOnly && event.clipboardData.files.length > 0) intake.add([...event.clipboardData.files])
      }}
    >
      <IntakeBar intake={intake} readOnly={readOnly} />
      {tray.unsorted.length > 0 && (
        <UnsortedStrip
          shots={tray.unsorted}
          target={shown}
          readOnly={readOnly}
          onFillSlots={() => setFilling(true)}
          onMove={move}
          onRemove={shots => void apply({ command: 'remove shots', trayId: tray.id, shots })}
        />
      )}
      <div className="row">
        <h2>{tray.name}</h2>
        <span className="grow" />
        <OrderSwitch label="Order of the tray" />
        <Button isDisabled={selected.length !== 2} onPress={() => setComparing(true)}>
          Side by side
        </Button>
        <Button
          isDisabled={readOnly || selected.length !== 2}
          onPress={() => {
            if (a && b) void apply({ command: 'swap slots', trayId: tray.id, a, b })
          }}
        >
          Swap
        </Button>
      </div>
      <TrayGrid
        tray={tray}
        order={order}
        selected={selected}
        readOnly={readOnly}
        onSelect={select}
        onDropShots={move}
        onDropFiles={(files, to) => intake.add(files, to)}
        onSwap={(from, to) => void apply({ command: 'swap slots', trayId: tray.id, a: from, b: to })}
      />
      {shown && slot ? (
        <div className="plugs-detail">
          <SlotView slot={slot} address={shown} />
          <TagPanel
            title={title}
            readings={readings}
            disabled={readOnly}
            onChange={change => void tag(change, 'condition' in change)}
          />
        </div>
      ) : (
        <p className="quiet">
          Choose a plug here or a bore on the deck: click, or go to it with the arrow keys. Shift or Ctrl
          chooses several.
        </p>
      )}
      {filling && (
        <FillDialog
          layout={job.layout}
          shots={tray.unsorted}
          onClose={() => setFilling(false)}
          onFill={plan => {
            setFilling(false)
            void apply({ command: 'fill slots', trayId: tray.id, assignments: plan.assignments })
          }}
        />
      )}
      {comparing && a && b && (
        <CompareView
          tray={findTray(job, tray.id) ?? tray}
          left={a}
          right={b}
          onClose={() => setComparing(false)}
        />
      )}
    </div>
  )
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

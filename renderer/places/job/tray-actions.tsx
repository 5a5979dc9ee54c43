// Adds a tray for another removal (after the repair, say), renames or removes the one looked at.
import { useState } from 'react'
import { stagesInOrder } from '../../../shared/job/stage.ts'
import type { Stage } from '../../../shared/job/tray-schema.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { MenuButton } from '../../parts/menu.tsx'
import { useJobPage } from './job-context.ts'

export function TrayActions() {
  const { job, tray, setTray, apply, readOnly } = useJobPage()
  const [editing, setEditing] = useState<'new' | 'this'>()
  const keep = async (command: 'add tray' | 'rename tray', trayId: string, name: string, stage: Stage) => {
    const done = await apply({ command, trayId, name, stage })
    if (done && command === 'add tray') setTray(trayId)
  }
  return (
    <>
      <MenuButton
        label="Trays"
        commands={[
          { id: 'add', text: 'Add a tray', isDisabled: readOnly, run: () => setEditing('new') },
          {
            id: 'change',
            text: `Change tray ${tray.name}`,
            isDisabled: readOnly,
            run: () => setEditing('this'),
          },
        ]}
      />
      {editing && (
        <TrayDialog
          title={editing === 'new' ? 'Another tray' : 'Tray'}
          start={editing === 'new' ? { name: 'After repair', stage: 'after repair' } : tray}
          onClose={() => setEditing(undefined)}
          onKeep={(name, stage) => {
            const trayId = editing === 'new' ? crypto.randomUUID() : tray.id
            const command = editing === 'new' ? ('add tray' as const) : ('rename tray' as const)
            void keep(command, trayId, name, stage)
            setEditing(undefined)
          }}
          onRemove={
            editing === 'this' && job.trays.length > 1
              ? () => {
                  void apply({ command: 'remove tray', trayId: tray.id })
                  setEditing(undefined)
                }
              : undefined
          }
        />
      )}
    </>
  )
}

type TrayDialogProps = {
  title: string
  start: { name: string; stage: Stage }
  onClose: () => void
  onKeep: (name: string, stage: Stage) => void
  onRemove: (() => void) | undefined
}

function TrayDialog({ title, start, onClose, onKeep, onRemove }: TrayDialogProps) {
  const [name, setName] = useState(start.name)
  const [stage, setStage] = useState<Stage>(start.stage)
  return (
    <Dialog title={title} onClose={onClose}>
      <p>A tray is the plugs of one removal. Gauge readings belong to its stage.</p>
      <label className="field">
        <span className="field-label">Name</span>
        <input value={name} maxLength={80} onChange={event => setName(event.target.value)} />
      </label>
      <label className="field">
        <span className="field-label">Stage</span>
        <select
          value={stage}
          onChange={event => setStage(stagesInOrder.find(one => one === event.target.value) ?? stage)}
        >
          {stagesInOrder.map(one => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
      <div className="dialog-buttons">
        {onRemove && <Button onPress={onRemove}>Remove this tray (can be undone)</Button>}
        <span className="grow" />
        <Button onPress={onClose}>Cancel</Button>
        <Button kind="main" isDisabled={name.trim() === ''} onPress={() => onKeep(name.trim(), stage)}>
          Keep
        </Button>
      </div>
    </Dialog>
  )
}

// A new job: complaint, vehicle in words, VIN if there is one, odometer, and the engine.
import { useId, useState } from 'react'
import { layoutById } from '../../../shared/engine/layouts.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { checkVin } from '../../../shared/engine/vin.ts'
import type { Distance } from '../../../shared/units/quantity.ts'
import { inWords } from '../../api/client.ts'
import { useJobActions } from '../../api/use-jobs.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { LayoutPicker } from '../../parts/layout-picker/layout-picker.tsx'
import { OdometerField } from '../../parts/odometer-field.tsx'
import { VinRemark } from '../../parts/vin-remark.tsx'
import './new-job.css'

type NewJobDialogProps = { onClose: () => void; onMade: (id: string) => void }

export function NewJobDialog({ onClose, onMade }: NewJobDialogProps) {
  const id = useId()
  const [complaint, setComplaint] = useState('')
  const [vehicle, setVehicle] = useState('')
  const [vin, setVin] = useState('')
  const [odometer, setOdometer] = useState<Distance>()
  const [wrong, setWrong] = useState(false)
  const [layout, setLayout] = useState<Layout | undefined>(() => layoutById('i4'))
  const { create } = useJobActions()
  const normalised = checkVin(vin).normalised

  const make = () => {
    if (!layout || wrong) return
    create.mutate(
      {
        complaint: complaint.trim(),
        engine: {
          vehicle: vehicle.trim(),
          ...(normalised === '' ? {} : { vin: normalised.slice(0, 40) }),
          ...(odometer ? { odometer } : {}),
        },
        layout,
      },
      { onSuccess: state => onMade(state.job.id) },
    )
  }

  return (
    <Dialog title="New job" wide onClose={onClose}>
      <form
        className="new-job"
        onSubmit={event => {
          event.preventDefault()
          make()
        }}
      >
        <div className="field">
          <label htmlFor={`${id}-complaint`}>Complaint, in the customer’s words</label>
          <textarea
            id={`${id}-complaint`}
            rows={2}
            // oxlint-disable-next-line jsx-a11y/no-autofocus -- the dialog was opened to type this
            autoFocus
            maxLength={4000}
            value={complaint}
            onChange={event => setComplaint(event.target.value)}
          />
        </div>
        <div className="new-job-row">
          <div className="field">
            <label htmlFor={`${id}-vehicle`}>Vehicle, boat or machine</label>
            <input
              id={`${id}-vehicle`}
              maxLength={200}
              autoComplete="off"
              value={vehicle}
              onChange={event => setVehicle(event.target.value)}
            />
          </div>
          <div className="field">
            <label htmlFor={`${id}-vin`}>VIN, if it has one</label>
            <input
              id={`${id}-vin`}
              maxLength={40}
              autoComplete="off"
              spellCheck={false}
              value={vin}
              onChange={event => setVin(event.target.value)}
            />
            <VinRemark vin={vin} />
          </div>
          <OdometerField value={odometer} onChange={setOdometer} onWrong={setWrong} />
        </div>
        <LayoutPicker layout={layout} onPick={setLayout} />
        {create.error && (
          <p className="field-error" role="alert">
            {inWords(create.error)}
          </p>
        )}
        <div className="dialog-buttons">
          <Button onPress={onClose}>Cancel</Button>
          <Button type="submit" kind="main" isDisabled={!layout || wrong || create.isPending}>
            Make the job
          </Button>
        </div>
      </form>
    </Dialog>
  )
}

// What was typed when the job was made, and the circumstances that the readings depend on; all can be changed.
import { useState } from 'react'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { checkVin } from '../../../shared/engine/vin.ts'
import type { Command } from '../../../shared/job/command-schema.ts'
import { formatAltitude, formatVacuum } from '../../../shared/units/format.ts'
import { parseAltitude, parseVacuum } from '../../../shared/units/parse.ts'
import { useUnits } from '../../api/use-settings.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { OdometerField } from '../../parts/odometer-field.tsx'
import { QuantityField } from '../../parts/quantity-field.tsx'
import { VinRemark } from '../../parts/vin-remark.tsx'
import { LayoutPicker } from '../../parts/layout-picker/layout-picker.tsx'
import '../jobs/new-job.css'
import { useJobPage } from './job-context.ts'
import { SpecificationFields } from './specification-fields.tsx'

export function JobFactsDialog({ onClose }: { onClose: () => void }) {
  const { job, apply } = useJobPage()
  const units = useUnits()
  const [complaint, setComplaint] = useState(job.complaint)
  const [notes, setNotes] = useState(job.notes ?? '')
  const [engine, setEngine] = useState(job.engine)
  const [circumstances, setCircumstances] = useState(job.circumstances)
  const [technician, setTechnician] = useState(job.technician ?? '')
  const [layout, setLayout] = useState<Layout>(job.layout)
  const [wrong, setWrong] = useState<ReadonlySet<string>>(new Set())
  const mark = (name: string) => (isWrong: boolean) =>
    setWrong(now => new Set(isWrong ? [...now, name] : [...now].filter(one => one !== name)))

  const keep = async () => {
    const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b)
    const commands: Command[] = []
    if (complaint !== job.complaint) commands.push({ command: 'set complaint', complaint })
    if (!same(engine, job.engine)) commands.push({ command: 'set engine', engine })
    if (!same(circumstances, job.circumstances))
      commands.push({ command: 'set circumstances', circumstances })
    if (technician.trim() !== (job.technician ?? ''))
      commands.push({ command: 'set technician', technician: technician.trim() || null })
    if (notes !== (job.notes ?? '')) commands.push({ command: 'set notes', notes })
    if (!same(layout, job.layout)) commands.push({ command: 'change layout', layout })
    for (const command of commands) if (!(await apply(command))) return
    onClose()
  }

  const vin = engine.vin ?? ''
  return (
    <Dialog title="The job" wide onClose={onClose}>
      <label className="field">
        <span className="field-label">Complaint</span>
        <textarea
          rows={2}
          maxLength={4000}
          value={complaint}
          onChange={event => setComplaint(event.target.value)}
        />
      </label>
      <div className="new-job-row">
        <label className="field">
          <span className="field-label">Vehicle, boat or machine</span>
          <input
            value={engine.vehicle}
            maxLength={200}
            onChange={event => setEngine({ ...engine, vehicle: event.target.value })}
          />
        </label>
        <div className="field">
          <label htmlFor="facts-vin">VIN</label>
          <input
            id="facts-vin"
            value={vin}
            maxLength={40}
            onChange={event => {
              const { vin: _, ...rest } = engine
              setEngine(event.target.value === '' ? rest : { ...rest, vin: event.target.value })
            }}
            onBlur={() =>
              setEngine(vin === '' ? engine : { ...engine, vin: checkVin(vin).normalised.slice(0, 40) })
            }
          />
          <VinRemark vin={vin} />
        </div>
        <label className="field">
          <span className="field-label">Technician</span>
          <input value={technician} maxLength={80} onChange={event => setTechnician(event.target.value)} />
        </label>
      </div>
      <div className="job-quantities">
        <OdometerField
          value={engine.odometer}
          onWrong={mark('odometer')}
          onChange={odometer => {
            const { odometer: _, ...rest } = engine
            setEngine(odometer ? { ...rest, odometer } : rest)
          }}
        />
        <QuantityField
          label="Altitude"
          unit={units.altitude}
          value={circumstances.altitude}
          format={one => formatAltitude(one, units.altitude)}
          parse={text => parseAltitude(text, units.altitude)}
          onWrong={mark('altitude')}
          onChange={altitude => {
            const { altitude: _, ...rest } = circumstances
            setCircumstances(altitude ? { ...rest, altitude } : rest)
          }}
        />
        <QuantityField
          label="Barometer, not reduced to sea level"
          unit={units.vacuum}
          value={circumstances.barometer}
          format={one => formatVacuum(one, units.vacuum)}
          parse={text => parseVacuum(text, units.vacuum)}
          onWrong={mark('barometer')}
          onChange={barometer => {
            const { barometer: _, ...rest } = circumstances
            setCircumstances(barometer ? { ...rest, barometer } : rest)
          }}
        />
        <label className="check">
          <input
            type="checkbox"
            checked={circumstances.engineWarm === true}
            onChange={event => setCircumstances({ ...circumstances, engineWarm: event.target.checked })}
          />
          Engine warm
        </label>
      </div>
      <SpecificationFields
        value={circumstances.specification ?? {}}
        mark={mark}
        onChange={specification => {
          const { specification: _, ...rest } = circumstances
          setCircumstances(Object.keys(specification).length > 0 ? { ...rest, specification } : rest)
        }}
      />
      <label className="field">
        <span className="field-label">Notes</span>
        <textarea rows={3} maxLength={8000} value={notes} onChange={event => setNotes(event.target.value)} />
      </label>
      <details>
        <summary>Engine: {layout.name}</summary>
        <LayoutPicker layout={layout} onPick={setLayout} />
      </details>
      <div className="dialog-buttons">
        <Button onPress={onClose}>Cancel</Button>
        <Button kind="main" isDisabled={wrong.size > 0} onPress={() => void keep()}>
          Keep
        </Button>
      </div>
    </Dialog>
  )
}

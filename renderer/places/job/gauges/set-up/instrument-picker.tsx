// Chooses the tester of the next pulls, or adds one with its division and class.
import { useId, useState } from 'react'
import type { Instrument } from '../../../../../shared/gauges/instrument-schema.ts'
import { Button } from '../../../../parts/button.tsx'
import { useJobPage } from '../../job-context.ts'
import { InstrumentDialog } from './instrument-dialog.tsx'
import type { InstrumentChoice } from './use-instrument.ts'

export function InstrumentPicker({ choice }: { choice: InstrumentChoice }) {
  const { job, apply, readOnly } = useJobPage()
  const [isAdding, setAdding] = useState(false)
  const id = useId()
  const { kind, known, chosen, choose } = choice
  if (kind === undefined) return null
  const add = async (instrument: Instrument) => {
    const done = await apply({
      command: 'set instruments',
      instruments: [...(job.instruments ?? []), instrument],
    })
    if (done) choose(instrument.id)
  }
  return (
    <div className="instrument field">
      <label htmlFor={id}>Tester: {kind}</label>
      <div className="row">
        <select
          id={id}
          value={chosen ?? ''}
          disabled={readOnly}
          onChange={event => choose(event.target.value === '' ? null : event.target.value)}
        >
          <option value="">not named</option>
          {known.map(one => (
            <option key={one.id} value={one.id}>
              {instrumentWords(one)}
            </option>
          ))}
        </select>
        <Button onPress={() => setAdding(true)} isDisabled={readOnly}>
          Add a tester
        </Button>
      </div>
      {isAdding && (
        <InstrumentDialog
          kind={kind}
          onClose={() => setAdding(false)}
          onAdd={instrument => {
            setAdding(false)
            void add(instrument)
          }}
        />
      )}
    </div>
  )
}

/** "Red gauge, division 2 psi, 1.6 % of 300 psi". */
function instrumentWords({ name, division, unit = '', accuracyPercent, fullScale }: Instrument): string {
  return [
    name,
    division === undefined ? '' : `division ${division} ${unit}`.trim(),
    accuracyPercent === undefined
      ? ''
      : `${accuracyPercent} %${fullScale === undefined ? '' : ` of ${fullScale} ${unit}`}`.trim(),
  ]
    .filter(Boolean)
    .join(', ')
}

// What was wrong with the reading: the scale, the zero, the unit; or an earlier correction that is to be taken back.
import { useState } from 'react'
import { parseNumber } from '../../../../../shared/units/parse.ts'
import { Segmented } from '../../../../parts/segmented.tsx'
import { type Draft, unitNames } from './correction-draft.ts'

type FieldsProps = {
  draft: Draft
  /** Units that the chosen pulls were entered in. */
  units: readonly string[]
  onChange: (draft: Draft) => void
}

export function CorrectionFields({ draft, units, onChange }: FieldsProps) {
  const set = (part: Partial<Draft>) => onChange({ ...draft, ...part })
  return (
    <>
      <Segmented
        label="What was wrong"
        labelShown
        value={draft.kind}
        options={[
          { value: 'scale', text: 'Scale misread' },
          { value: 'offset', text: 'Zero off' },
          { value: 'unit', text: 'Wrong unit' },
          { value: 'as entered', text: 'Back to as entered' },
        ]}
        onChange={kind => set({ kind })}
      />
      <div className="row correction-fields">
        {draft.kind === 'scale' && (
          <>
            <NumberField
              label="A division was taken for"
              value={draft.read}
              onChange={read => set({ read })}
            />
            <NumberField label="and really is" value={draft.real} onChange={real => set({ real })} />
          </>
        )}
        {draft.kind === 'offset' && (
          <>
            <NumberField
              label={`Add to every reading${units.length === 0 ? '' : ` (${units.join(' or ')}, as entered)`}`}
              value={draft.add}
              onChange={add => set({ add })}
            />
            {units.length > 1 && (
              <p className="field-error" role="alert">
                These were entered in different units: {units.join(', ')}. Correct those of each unit by
                themselves.
              </p>
            )}
          </>
        )}
        {draft.kind === 'unit' && (
          <label className="field">
            <span className="field-label">The numbers were really in</span>
            <select value={draft.unit} onChange={event => set({ unit: event.target.value })}>
              <option value="">Choose a unit</option>
              {unitNames.map(one => (
                <option key={one}>{one}</option>
              ))}
            </select>
          </label>
        )}
        {draft.kind === 'as entered' && (
          <p className="quiet">
            The chosen pulls count as they were entered. What was corrected stays on record.
          </p>
        )}
      </div>
    </>
  )
}

type NumberFieldProps = { label: string; value: string; onChange: (value: string) => void }

function NumberField({ label, value, onChange }: NumberFieldProps) {
  const [left, setLeft] = useState(false)
  const wrong = left && value !== '' && parseNumber(value) === null
  return (
    <label className="field">
      <span className="field-label">{label}</span>
      <input
        inputMode="decimal"
        value={value}
        aria-invalid={wrong}
        onBlur={() => setLeft(true)}
        onChange={event => onChange(event.target.value)}
      />
    </label>
  )
}

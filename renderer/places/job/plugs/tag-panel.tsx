// Tags for the selected plugs: one primary condition and the details beside it, by mouse or key.
import { useId } from 'react'
import {
  conditions,
  electrodeWearLevels,
  insulatorColours,
  insulatorDamageKinds,
  wetnessLevels,
} from '../../../../shared/plug/condition.ts'
import type { ReadingChange } from '../../../../shared/job/command-schema.ts'
import type { Reading, ReadingDetails } from '../../../../shared/job/tray-schema.ts'
import { conditionKeys, oilInWellKey } from './condition-keys.ts'
import { DepositPicker } from './deposit-picker.tsx'
import { GapField } from './gap-field.tsx'
import { NoteField } from './note-field.tsx'
import './tag-panel.css'

type TagPanelProps = {
  /** Readings of the selected plugs; undefined where a plug has none yet. */
  readings: readonly (Reading | undefined)[]
  /** Said above the tags, e.g. "Cylinder 3" or "3 plugs". */
  title: string
  disabled: boolean
  onChange: (change: ReadingChange) => void
}

/** The value that all readings share, or undefined when they differ or have none. */
function shared<T>(
  readings: readonly (Reading | undefined)[],
  pick: (reading: Reading) => T | undefined,
): T | undefined {
  const values = readings.map(reading => reading && pick(reading))
  return values.every(value => value === values[0]) ? values[0] : undefined
}

type DetailGroupProps<T extends string> = {
  name: string
  options: readonly T[]
  value: T | undefined
  disabled: boolean
  onPick: (value: T | null) => void
}

/** Pressing the chosen option again takes it away. */
function DetailGroup<T extends string>({ name, options, value, disabled, onPick }: DetailGroupProps<T>) {
  const id = useId()
  return (
    <div className="tag-group">
      <h4 id={id}>{name}</h4>
      <div className="tag-options" role="group" aria-labelledby={id}>
        {options.map(option => (
          <button
            key={option}
            type="button"
            className="tag"
            aria-pressed={option === value}
            disabled={disabled}
            onClick={() => onPick(option === value ? null : option)}
          >
            {option}
          </button>
        ))}
      </div>
    </div>
  )
}

export function TagPanel({ readings, title, disabled, onChange }: TagPanelProps) {
  const condition = shared(readings, reading => reading.condition)
  const oilInWell = shared(readings, reading => reading.details.oilInWell)
  const detail = <K extends keyof ReadingDetails>(key: K) => shared(readings, reading => reading.details[key])
  const single = readings.length === 1 ? readings[0] : undefined

  return (
    <section className="tag-panel" aria-label={`Reading of ${title}`}>
      <h3>{title}</h3>
      <div className="tag-options conditions" role="group" aria-label="Condition">
        {conditions.map(option => (
          <button
            key={option}
            type="button"
            className="tag tag-condition"
            aria-pressed={option === condition}
            aria-keyshortcuts={conditionKeys[option]}
            disabled={disabled}
            onClick={() => onChange({ condition: option === condition ? null : option })}
          >
            {option}
            <kbd>{conditionKeys[option].toUpperCase()}</kbd>
          </button>
        ))}
      </div>
      <button
        type="button"
        className="tag tag-well"
        aria-pressed={oilInWell === true}
        aria-keyshortcuts={oilInWellKey}
        disabled={disabled}
        onClick={() => onChange({ details: { oilInWell: oilInWell ? null : true } })}
      >
        oil in the plug well
        <kbd>{oilInWellKey.toUpperCase()}</kbd>
        <small>tube seal: not the same as oil on the nose</small>
      </button>
      <details className="tag-details" open={readings.some(reading => reading && hasDetails(reading))}>
        <summary>Details</summary>
        <DetailGroup
          name="Insulator colour"
          options={insulatorColours}
          value={detail('insulatorColour')}
          disabled={disabled}
          onPick={insulatorColour => onChange({ details: { insulatorColour } })}
        />
        <DepositPicker
          deposits={single?.details.deposits ?? []}
          disabled={disabled || readings.length !== 1}
          onChange={deposits => onChange({ details: { deposits: deposits.length > 0 ? deposits : null } })}
        />
        <DetailGroup
          name="Wetness"
          options={wetnessLevels}
          value={detail('wetness')}
          disabled={disabled}
          onPick={wetness => onChange({ details: { wetness } })}
        />
        <DetailGroup
          name="Electrodes"
          options={electrodeWearLevels}
          value={detail('electrodeWear')}
          disabled={disabled}
          onPick={electrodeWear => onChange({ details: { electrodeWear } })}
        />
        <DetailGroup
          name="Insulator damage"
          options={insulatorDamageKinds}
          value={detail('insulatorDamage')}
          disabled={disabled}
          onPick={insulatorDamage => onChange({ details: { insulatorDamage } })}
        />
        {readings.length === 1 && (
          <GapField
            gap={single?.details.gap}
            disabled={disabled}
            onChange={gap => onChange({ details: { gap: gap ?? null } })}
          />
        )}
      </details>
      {readings.length === 1 && (
        <NoteField
          key={title}
          note={single?.note ?? ''}
          disabled={disabled}
          onChange={note => onChange({ note: note === '' ? null : note })}
        />
      )}
    </section>
  )
}

const hasDetails = (reading: Reading): boolean =>
  Object.keys(reading.details).some(key => key !== 'oilInWell' && key in reading.details)

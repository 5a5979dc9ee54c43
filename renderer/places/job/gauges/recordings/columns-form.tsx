// The beginning of the file as it stands, and which column is what: guessed, confirmed or changed by the person.
import type { ReactNode } from 'react'
import type {
  RecordingMapping,
  RecordingPreview,
  RecordingTestKind,
  RecordingWritten,
} from '../../../../../shared/contract/recordings-contract.ts'
import { parseNumber } from '../../../../../shared/units/parse.ts'
import { Button } from '../../../../parts/button.tsx'
import { ColumnsPreview } from './columns-preview.tsx'
import { NumberField } from './number-field.tsx'
import { separatorWords, WrittenFields } from './written-fields.tsx'
import { WheelFields } from './wheel-fields.tsx'

type ColumnsFormProps = {
  preview: RecordingPreview
  mapping: RecordingMapping
  test: RecordingTestKind
  onChange: (mapping: RecordingMapping) => void
  onReadAs: (written: RecordingWritten) => void
  onEvaluate: () => void
  onDiscard: () => void
}

const crankValues = ['rpm', 'tooth interval', 'tooth time'] as const
const timeUnits = ['s', 'ms', 'us'] as const

/** What still has to be given before the recording can be evaluated; null when nothing. */
function missing({
  value,
  timeColumn,
  rate,
  teeth,
  valueColumn,
  syncColumn,
}: RecordingMapping): string | null {
  const byTeeth = value === 'tooth interval' || value === 'tooth time'
  if (byTeeth && teeth === undefined) return 'Choose the wheel.'
  if (!byTeeth && timeColumn === undefined && rate === undefined) return 'Give the samples a second.'
  if (!byTeeth && timeColumn === valueColumn) return 'Time and value are the same column.'
  return syncColumn !== undefined && syncColumn === valueColumn ? 'Sync and value are the same column.' : null
}

export function ColumnsForm(props: ColumnsFormProps) {
  const { preview, mapping, test, onChange, onReadAs, onEvaluate, onDiscard } = props
  const byTeeth = mapping.value === 'tooth interval' || mapping.value === 'tooth time'
  const lacks = missing(mapping)
  const withOptional = (key: 'timeColumn' | 'syncColumn' | 'rate', value: number | undefined) => {
    const { [key]: _, ...rest } = mapping
    onChange(value === undefined ? rest : { ...rest, [key]: value })
  }
  return (
    <form
      className="card recording-columns"
      aria-label={`Columns of ${preview.fileName}`}
      onSubmit={event => {
        event.preventDefault()
        if (lacks === null) onEvaluate()
      }}
    >
      <h3>{preview.fileName}</h3>
      <p className="quiet">
        {(preview.bytes / 1e6).toFixed(1)} MB; columns separated by {separatorWords[mapping.separator]},
        decimal {mapping.decimal}, samples from line {mapping.firstLine} on.
      </p>
      {preview.doubts.length > 0 && (
        <ul className="recording-doubts">
          {preview.doubts.map(text => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      <ColumnsPreview preview={preview} mapping={mapping} />
      <WrittenFields
        key={preview.guess.firstLine}
        mapping={mapping}
        onChange={onChange}
        onReadAs={onReadAs}
      />
      <div className="recording-fields">
        {test === 'crank speed' && (
          <Choice label="Each row holds">
            <select
              value={mapping.value}
              onChange={event => {
                const value = crankValues.find(one => one === event.target.value)
                if (value) onChange({ ...mapping, value })
              }}
            >
              <option value="rpm">speed in rpm</option>
              <option value="tooth interval">time from tooth to tooth</option>
              <option value="tooth time">time of a tooth</option>
            </select>
          </Choice>
        )}
        {!byTeeth && (
          <ColumnChoice
            label="Time"
            none="no time column"
            preview={preview}
            value={mapping.timeColumn}
            onChange={column => withOptional('timeColumn', column)}
          />
        )}
        <Choice label="Unit of the time">
          <select
            value={mapping.timeUnit}
            disabled={!byTeeth && mapping.timeColumn === undefined}
            onChange={event => {
              const timeUnit = timeUnits.find(one => one === event.target.value)
              if (timeUnit) onChange({ ...mapping, timeUnit })
            }}
          >
            <option value="s">seconds</option>
            <option value="ms">milliseconds</option>
            <option value="us">microseconds</option>
          </select>
        </Choice>
        {!byTeeth && mapping.timeColumn === undefined && (
          <NumberField
            label="Samples a second"
            value={mapping.rate}
            parse={text => positive(text, 10_000_000)}
            onChange={rate => withOptional('rate', rate)}
          />
        )}
        <ColumnChoice
          label={test === 'relative compression' ? 'Starter current' : byTeeth ? 'Tooth' : 'Speed'}
          preview={preview}
          value={mapping.valueColumn}
          onChange={column => onChange({ ...mapping, valueColumn: column ?? 0 })}
        />
        {mapping.value === 'current' && (
          <NumberField
            label="Amperes for one unit (minus turns the clamp round)"
            value={mapping.scale}
            parse={text => {
              const number = parseNumber(text)
              return number === null || number === 0 || Math.abs(number) > 1e6 ? null : number
            }}
            onChange={scale => onChange({ ...mapping, scale: scale ?? 1 })}
          />
        )}
        <ColumnChoice
          label="Sync of cylinder 1"
          none="none"
          preview={preview}
          value={mapping.syncColumn}
          onChange={column => withOptional('syncColumn', column)}
        />
        {byTeeth && <WheelFields mapping={mapping} onChange={onChange} />}
      </div>
      <div className="row recording-buttons">
        {lacks !== null && <p className="field-error">{lacks}</p>}
        <Button onPress={onDiscard}>Discard</Button>
        <Button kind="main" type="submit" isDisabled={lacks !== null}>
          Evaluate
        </Button>
      </div>
    </form>
  )
}

const positive = (text: string, most: number): number | null => {
  const number = parseNumber(text)
  return number !== null && number > 0 && number <= most ? number : null
}

function Choice({ label, children }: { label: string; children: ReactNode }) {
  return (
    <label className="field">
      <span className="field-label">{label}</span>
      {children}
    </label>
  )
}

type ColumnChoiceProps = {
  label: string
  /** Words for no column; without them one has to be chosen. */
  none?: string
  preview: RecordingPreview
  value: number | undefined
  onChange: (column: number | undefined) => void
}

function ColumnChoice({ label, none, preview, value, onChange }: ColumnChoiceProps) {
  return (
    <Choice label={label}>
      <select
        value={value ?? ''}
        onChange={event => onChange(event.target.value === '' ? undefined : Number(event.target.value))}
      >
        {none !== undefined && <option value="">{none}</option>}
        {preview.columns.map((column, at) => (
          // oxlint-disable-next-line react/no-array-index-key -- a column is its place
          <option key={at} value={at} disabled={!column.isNumber}>
            {at + 1}: {column.name === '' ? 'no name' : column.name}
          </option>
        ))}
      </select>
    </Choice>
  )
}

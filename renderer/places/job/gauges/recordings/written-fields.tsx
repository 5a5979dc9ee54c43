// How the file is written, for when it was guessed wrong: what separates columns, the decimal sign, where samples begin.
import type {
  RecordingMapping,
  RecordingWritten,
} from '../../../../../shared/contract/recordings-contract.ts'
import { parseNumber } from '../../../../../shared/units/parse.ts'
import { NumberField } from './number-field.tsx'

export const separatorWords = {
  comma: 'commas',
  semicolon: 'semicolons',
  tab: 'tabs',
  space: 'spaces',
} as const

const separators = ['comma', 'semicolon', 'tab', 'space'] as const
const mostLines = 1000

type WrittenFieldsProps = {
  mapping: RecordingMapping
  onChange: (mapping: RecordingMapping) => void
  onReadAs: (written: RecordingWritten) => void
}

export function WrittenFields({ mapping, onChange, onReadAs }: WrittenFieldsProps) {
  const { separator, decimal, firstLine } = mapping
  return (
    <details>
      <summary>How the file is written</summary>
      <div className="recording-fields">
        <label className="field">
          <span className="field-label">Columns are separated by</span>
          <select
            value={separator}
            onChange={event => {
              const chosen = separators.find(one => one === event.target.value)
              if (chosen) onReadAs({ separator: chosen, decimal: chosen === 'comma' ? 'point' : decimal })
            }}
          >
            {separators.map(one => (
              <option key={one} value={one}>
                {separatorWords[one]}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="field-label">Decimal sign</span>
          <select
            value={decimal}
            disabled={separator === 'comma'}
            onChange={event =>
              onReadAs({ separator, decimal: event.target.value === 'comma' ? 'comma' : 'point' })
            }
          >
            <option value="point">point</option>
            <option value="comma">comma</option>
          </select>
        </label>
        <NumberField
          label="Samples begin in line"
          value={firstLine}
          parse={text => {
            const line = parseNumber(text)
            return line !== null && Number.isInteger(line) && line >= 1 && line <= mostLines ? line : null
          }}
          onChange={line => {
            if (line !== undefined) onChange({ ...mapping, firstLine: line })
          }}
        />
      </div>
    </details>
  )
}

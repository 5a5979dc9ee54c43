// The toothed wheel a crank sensor looks at: the common ones by name, others by their numbers.
import type { RecordingMapping } from '../../../../../shared/contract/recordings-contract.ts'
import { parseNumber } from '../../../../../shared/units/parse.ts'
import { NumberField } from './number-field.tsx'

const wheels = [
  [60, 2],
  [36, 1],
  [36, 2],
] as const

type WheelFieldsProps = { mapping: RecordingMapping; onChange: (mapping: RecordingMapping) => void }

const whole = (least: number, most: number) => (text: string) => {
  const number = parseNumber(text)
  return number !== null && Number.isInteger(number) && number >= least && number <= most ? number : null
}

export function WheelFields({ mapping, onChange }: WheelFieldsProps) {
  const { teeth, missingTeeth = 0 } = mapping
  const known = wheels.some(([count, gap]) => count === teeth && gap === missingTeeth)
  const set = (count: number | undefined, gap: number) => {
    const { teeth: _, missingTeeth: __, ...rest } = mapping
    onChange(count === undefined ? rest : { ...rest, teeth: count, missingTeeth: gap })
  }
  return (
    <>
      <label className="field">
        <span className="field-label">Wheel</span>
        <select
          value={teeth === undefined ? '' : known ? `${teeth}-${missingTeeth}` : 'other'}
          onChange={event => {
            const wheel = wheels.find(([count, gap]) => `${count}-${gap}` === event.target.value)
            if (wheel) set(wheel[0], wheel[1])
            else set(event.target.value === 'other' ? 24 : undefined, 0)
          }}
        >
          <option value="">not chosen</option>
          {wheels.map(([count, gap]) => (
            <option key={`${count}-${gap}`} value={`${count}-${gap}`}>
              {count} teeth, {gap} missing
            </option>
          ))}
          <option value="other">another wheel</option>
        </select>
      </label>
      {teeth !== undefined && !known && (
        <>
          <NumberField
            label="Teeth in a full turn, missing ones counted"
            value={teeth}
            parse={whole(4, 400)}
            onChange={count => set(count ?? teeth, missingTeeth)}
          />
          <NumberField
            label="Missing in a row"
            value={missingTeeth}
            parse={whole(0, 3)}
            onChange={gap => set(teeth, gap ?? 0)}
          />
        </>
      )}
    </>
  )
}

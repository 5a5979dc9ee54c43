// A choice in the cell of a table: options carry digits, so that a keypad picks one; Enter goes on.
import type { ChoiceField } from './field.ts'
import { previousField } from './walk.ts'

type ChoiceSelectProps = {
  field: ChoiceField
  label: string
  value: string
  disabled: boolean
  onChange: (option: string) => void
  onEnter: (field: HTMLElement) => void
}

export function ChoiceSelect({ field, label, value, disabled, onChange, onEnter }: ChoiceSelectProps) {
  return (
    <select
      className="entry"
      aria-label={label}
      value={value}
      disabled={disabled}
      onChange={event => onChange(event.target.value)}
      onKeyDown={event => {
        const option = field.options[Number(event.key) - 1]
        if (event.key === 'Enter') onEnter(event.currentTarget)
        else if (event.key === 'Backspace' && value !== '') onChange('')
        else if (event.key === 'Backspace') previousField(event.currentTarget)
        else if (option !== undefined) onChange(option)
        else return
        event.preventDefault()
      }}
    >
      <option value="">not noted</option>
      {field.options.map((option, at) => (
        <option key={option} value={option}>
          {at + 1} {option}
        </option>
      ))}
    </select>
  )
}

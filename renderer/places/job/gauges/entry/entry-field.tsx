// One typed field of a fast entry: digits and Enter alone. Enter goes on; Backspace in an empty field goes back.
import type { KeyboardEvent } from 'react'
import { previousField } from './walk.ts'

type EntryFieldProps = {
  label: string
  value: string
  wrong: boolean
  disabled: boolean
  /** Letters are typed here, and no number. */
  letters?: boolean
  onChange: (text: string) => void
  /** Called on Enter with the field, which decides where the focus goes. */
  onEnter: (field: HTMLElement) => void
}

export function EntryField({ label, value, wrong, disabled, letters, onChange, onEnter }: EntryFieldProps) {
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      event.preventDefault()
      onEnter(event.currentTarget)
    } else if (event.key === 'Backspace' && value === '') {
      event.preventDefault()
      previousField(event.currentTarget)
    }
  }
  return (
    <input
      className={letters ? 'entry entry-letters' : 'entry'}
      inputMode={letters ? 'text' : 'decimal'}
      autoComplete="off"
      aria-label={label}
      aria-invalid={wrong}
      value={value}
      disabled={disabled}
      onChange={event => onChange(event.target.value)}
      onKeyDown={onKeyDown}
    />
  )
}

// One field of a fast entry row: digits and Enter alone. Enter keeps the number and goes on to the next field.
import type { KeyboardEvent } from 'react'

type EntryFieldProps = {
  label: string
  value: string
  wrong: boolean
  disabled: boolean
  onChange: (text: string) => void
  /** Called on Enter; true when the row was complete and kept. */
  onEnter: () => void
}

/** The fields of a table in document order; Enter walks through them and comes round to the first. */
export function nextField(from: HTMLElement): void {
  const fields = [...(from.closest('table')?.querySelectorAll<HTMLInputElement>('input.entry') ?? [])]
  const at = fields.findIndex(field => field === from)
  fields[(at + 1) % fields.length]?.focus()
}

function previousField(from: HTMLElement): void {
  const fields = [...(from.closest('table')?.querySelectorAll<HTMLInputElement>('input.entry') ?? [])]
  fields[fields.findIndex(field => field === from) - 1]?.focus()
}

export function EntryField({ label, value, wrong, disabled, onChange, onEnter }: EntryFieldProps) {
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      event.preventDefault()
      const field = event.currentTarget
      onEnter()
      nextField(field)
    } else if (event.key === 'Backspace' && value === '') previousField(event.currentTarget)
  }
  return (
    <input
      className="entry"
      inputMode="decimal"
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

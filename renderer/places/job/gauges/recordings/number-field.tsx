// A number typed as text: what does not read as one is marked and not passed on.
import { useId, useState } from 'react'

type NumberFieldProps = {
  label: string
  value: number | undefined
  /** Null for what is no fitting number. */
  parse: (text: string) => number | null
  onChange: (value: number | undefined) => void
}

export function NumberField({ label, value, parse, onChange }: NumberFieldProps) {
  const [text, setText] = useState(value === undefined ? '' : String(value))
  const wrong = text.trim() !== '' && parse(text) === null
  const field = useId()
  return (
    <div className="field">
      <label htmlFor={field}>{label}</label>
      <input
        id={field}
        inputMode="decimal"
        value={text}
        aria-invalid={wrong}
        onChange={event => {
          setText(event.target.value)
          onChange(parse(event.target.value) ?? undefined)
        }}
      />
    </div>
  )
}

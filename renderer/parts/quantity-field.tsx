// A field for a number with a unit: decimal keypad, comma or point, another unit may be typed; says what it understood.
import { useId, useState } from 'react'

type QuantityFieldProps<Q> = {
  label: string
  value: Q | undefined
  format: (value: Q) => string
  parse: (text: string) => Q | null
  onChange: (value: Q | undefined) => void
  /** Told when what stands in the field is not a quantity. */
  onWrong?: (isWrong: boolean) => void
}

export function QuantityField<Q>({ label, value, format, parse, onChange, onWrong }: QuantityFieldProps<Q>) {
  const id = useId()
  const shown = value === undefined ? '' : format(value).replaceAll('\u00a0', ' ')
  const [typed, setTyped] = useState<string>()
  const [wrong, setWrong] = useState(false)
  const settle = (isWrong: boolean) => {
    setWrong(isWrong)
    onWrong?.(isWrong)
  }
  const read = (text: string) => {
    setTyped(text)
    if (text.trim() === '') {
      settle(false)
      return
    }
    settle(parse(text) === null)
  }
  const send = () => {
    if (typed === undefined) return
    const parsed = typed.trim() === '' ? undefined : parse(typed)
    if (parsed === null) return
    setTyped(undefined)
    if (typed !== shown) onChange(parsed)
  }
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={typed ?? shown}
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-why` : undefined}
        onChange={event => read(event.target.value)}
        onBlur={send}
      />
      {wrong && (
        <p id={`${id}-why`} className="field-error">
          Type a plain number, with its unit if it is another one.
        </p>
      )}
    </div>
  )
}

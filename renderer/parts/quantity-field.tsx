// A field for a number with a unit: decimal keypad, comma or point, another unit may be typed. It says what it understood,
// asks about odd values without refusing them, and keeps what is not a number for the person to put right.
import { useEffect, useId, useRef, useState } from 'react'
import './quantity-field.css'

type QuantityFieldProps<Q> = {
  label: string
  /** Stands in the field after the number; typed text may name another one. */
  unit: string
  /** Where the unit itself can be chosen. */
  units?: readonly string[]
  onUnit?: (unit: string) => void
  value: Q | undefined
  /** With the unit, e.g. "120 500 km". */
  format: (value: Q) => string
  parse: (text: string) => Q | null
  onChange: (value: Q | undefined) => void
  /** Told when what stands in the field is not a quantity. */
  onWrong?: (isWrong: boolean) => void
  /** A question about an unlikely value; it is kept all the same. */
  question?: (value: Q) => string | undefined
}

export function QuantityField<Q>(props: QuantityFieldProps<Q>) {
  const { label, unit, units, onUnit, value, format, parse, onChange, onWrong, question } = props
  const id = useId()
  const field = useRef<HTMLInputElement>(null)
  const shown = value === undefined ? '' : bare(format(value), unit)
  const [typed, setTyped] = useState(shown)
  // Undo, another window or another unit may change the value while nobody types here.
  useEffect(() => {
    if (document.activeElement !== field.current) setTyped(shown)
  }, [shown])
  const parsed = typed.trim() === '' ? undefined : parse(typed)
  const wrong = parsed === null
  const asked = parsed == null ? undefined : question?.(parsed)
  const understood =
    parsed == null || bare(format(parsed), unit) === typed.trim() ? undefined : format(parsed)
  const read = (text: string) => {
    setTyped(text)
    const next = text.trim() === '' ? undefined : parse(text)
    onWrong?.(next === null)
    if (next !== null) onChange(next)
  }
  return (
    <div className="field quantity">
      <label htmlFor={id}>{label}</label>
      <span className="quantity-box">
        <input
          ref={field}
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={typed}
          aria-invalid={wrong}
          aria-describedby={`${id}-says`}
          onChange={event => read(event.target.value)}
          onBlur={() => {
            if (!wrong) setTyped(shown)
          }}
        />
        {units && onUnit ? (
          <select aria-label="Unit" value={unit} onChange={event => onUnit(event.target.value)}>
            {units.map(one => (
              <option key={one}>{one}</option>
            ))}
          </select>
        ) : (
          <span className="quantity-unit">{unit}</span>
        )}
      </span>
      <div id={`${id}-says`} role="status">
        {wrong && (
          <p className="field-error">
            Type a plain number, without a thousands sign; with its unit if it is another one.
          </p>
        )}
        {understood && <p className="field-remark">= {understood}</p>}
        {asked && <p className="field-remark">{asked}</p>}
      </div>
    </div>
  )
}

/** Without the field's own unit, which stands beside the field. */
function bare(text: string, unit: string): string {
  const plain = text.replaceAll('\u00a0', ' ')
  return plain.endsWith(` ${unit}`) ? plain.slice(0, -unit.length - 1) : plain
}

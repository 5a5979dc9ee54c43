// One number of the set-up, kept when the field is left or on Enter: one change to the job, not one a digit.
import { useId, useState } from 'react'
import { isBlank } from '../entry/field.ts'

type SetUpNumberProps = {
  title: string
  unit: string
  parse: (text: string) => number | null
  value: number | undefined
  isDisabled: boolean
  onKeep: (value: number | undefined) => void
}

export function SetUpNumber({ title, unit, parse, value, isDisabled, onKeep }: SetUpNumberProps) {
  const id = useId()
  const stored = value === undefined ? '' : String(value)
  /** Undefined while nobody types: the stored value shows, whoever changed it. */
  const [typed, setTyped] = useState<string>()
  const text = typed ?? stored
  const read = isBlank(text) ? undefined : parse(text)
  const keep = () => {
    if (read === null) return
    setTyped(undefined)
    if (read !== value) onKeep(read)
  }
  return (
    <div className="form-field set-up-number">
      <label className="field-label" htmlFor={id}>
        {title} ({unit})
      </label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={text}
        disabled={isDisabled}
        aria-invalid={read === null}
        onChange={event => setTyped(event.target.value)}
        onBlur={keep}
        onKeyDown={event => {
          if (event.key === 'Enter') keep()
        }}
      />
      {read === null && (
        <p className="field-error" role="status">
          Type a plain number in the usual range.
        </p>
      )}
    </div>
  )
}

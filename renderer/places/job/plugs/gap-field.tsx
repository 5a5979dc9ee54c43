// The measured gap of one plug, typed with comma or point and, if wanted, its own unit ("0.044 in").
import { useEffect, useId, useState } from 'react'
import { formatLength } from '../../../../shared/units/format.ts'
import { parseLength } from '../../../../shared/units/parse.ts'
import type { Length } from '../../../../shared/units/quantity.ts'
import { useUnits } from '../../../api/use-settings.ts'

type GapFieldProps = {
  gap: Length | undefined
  disabled: boolean
  onChange: (gap: Length | undefined) => void
}

export function GapField({ gap, disabled, onChange }: GapFieldProps) {
  const id = useId()
  const unit = useUnits().length
  const shown = gap ? formatLength(gap, unit) : ''
  const [typed, setTyped] = useState(shown)
  const [unclear, setUnclear] = useState(false)
  useEffect(() => setTyped(shown), [shown])
  const send = () => {
    if (typed.trim() === shown) return
    if (typed.trim() === '') {
      setUnclear(false)
      onChange(undefined)
      return
    }
    const parsed = parseLength(typed, unit)
    setUnclear(parsed === null)
    if (parsed) onChange(parsed)
  }
  return (
    <div className="tag-group">
      <label htmlFor={id}>Gap ({unit})</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={typed}
        disabled={disabled}
        aria-invalid={unclear}
        aria-describedby={unclear ? `${id}-why` : undefined}
        onChange={event => setTyped(event.target.value)}
        onBlur={send}
        onKeyDown={event => {
          if (event.key === 'Enter') send()
        }}
      />
      {unclear && (
        <p id={`${id}-why`} className="field-error">
          Not a length. Type a number such as 1.1, or with its unit: 0.044 in.
        </p>
      )}
    </div>
  )
}

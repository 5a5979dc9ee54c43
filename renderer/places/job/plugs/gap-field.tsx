// The measured gap of one plug, typed with comma or point and, if wanted, its own unit ("0.044 in").
import { useId, useState } from 'react'
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
  const [typed, setTyped] = useState<string>()
  const [unclear, setUnclear] = useState(false)
  const send = () => {
    if (typed === undefined || typed.trim() === shown) return
    const parsed = typed.trim() === '' ? undefined : parseLength(typed, unit)
    setUnclear(parsed === null)
    if (parsed === null) return
    setTyped(undefined)
    onChange(parsed)
  }
  return (
    <div className="tag-group">
      <label htmlFor={id}>Gap ({unit})</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={typed ?? shown}
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

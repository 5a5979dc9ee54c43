// One field of a form or of the guided walk: its label above, the unit after it, what is wrong in words below.
import { ChoiceButtons } from './choice-buttons.tsx'
import { EntryField } from './entry-field.tsx'
import { type Field, isWrong } from './field.ts'

type FormFieldProps = {
  field: Field
  /** Said after the title: which cylinder. */
  of?: string
  value: string
  disabled: boolean
  onChange: (text: string) => void
  onEnter: (field: HTMLElement) => void
}

export function FormField({ field, of, value, disabled, onChange, onEnter }: FormFieldProps) {
  const label = spoken(field, of)
  if (field.kind === 'choice' || field.kind === 'several')
    return <ChoiceButtons {...{ field, label, value, disabled, onChange, onEnter }} />
  const wrong = isWrong(field, value)
  return (
    <div className="form-field">
      <span className="field-label" aria-hidden="true">
        {field.title}
        {field.unit && ` (${field.unit})`}
      </span>
      {field.kind === 'text' && field.lines ? (
        <textarea
          className="entry"
          rows={field.lines}
          spellCheck={false}
          aria-label={label}
          aria-invalid={wrong}
          value={value}
          disabled={disabled}
          onChange={event => onChange(event.target.value)}
        />
      ) : (
        <EntryField
          {...{ label, value, wrong, disabled, onChange, onEnter }}
          letters={field.kind === 'text'}
        />
      )}
      {wrong && (
        <p className="field-error" role="status">
          {field.kind === 'number'
            ? 'Type a plain number in the usual range, without a thousands sign.'
            : 'This cannot be read.'}
        </p>
      )}
    </div>
  )
}

/** "First puff, cylinder 3, psi". */
export const spoken = (field: Field, of?: string): string =>
  [field.title, of, field.unit].filter(Boolean).join(', ')

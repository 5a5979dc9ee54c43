// A choice as large buttons side by side, one or several to be on. A digit picks too, arrows move, Enter goes on.
import { type KeyboardEvent, useId } from 'react'
import { type ChoiceField, type SeveralField, severalChosen, toggled } from './field.ts'

type ChoiceButtonsProps = {
  field: ChoiceField | SeveralField
  label: string
  value: string
  disabled: boolean
  /** Whether Enter stops here on its way through the fields. */
  stops?: boolean
  onChange: (text: string) => void
  onEnter?: (field: HTMLElement) => void
}

export function ChoiceButtons(props: ChoiceButtonsProps) {
  const { field, label, value, disabled, stops = true, onChange, onEnter } = props
  const id = useId()
  const on =
    field.kind === 'several'
      ? severalChosen(value, field.options)
      : field.options.filter(one => one === value)
  const press = (option: string) => {
    if (field.kind === 'several') onChange(toggled(value, field.options.indexOf(option) + 1))
    else onChange(option === value && !field.needed ? '' : option)
  }
  const stop = field.options[0]
  const onKeyDown = (event: KeyboardEvent<HTMLButtonElement>) => {
    const option = field.options[Number(event.key) - 1]
    const group = event.currentTarget.parentElement
    const buttons = [...(group?.querySelectorAll<HTMLButtonElement>('button') ?? [])]
    const move = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
    // Where the walk stops Enter goes on; on a button reached by hand it presses, and goes on once that is pressed.
    const goesOn = event.currentTarget.matches('.entry, [aria-pressed="true"]')
    if (event.key === 'Enter' && onEnter && goesOn) onEnter(event.currentTarget)
    else if (move !== undefined)
      buttons.at((buttons.indexOf(event.currentTarget) + move) % buttons.length)?.focus()
    else if (option !== undefined) press(option)
    else return
    event.preventDefault()
  }
  return (
    <div className="choice">
      <span className="field-label" id={id}>
        {field.title}
      </span>
      <div className="choice-buttons" role="group" aria-label={label}>
        {field.options.map((option, at) => (
          <button
            key={option}
            type="button"
            className={stops && option === stop ? 'tag-filter entry' : 'tag-filter'}
            aria-pressed={on.includes(option)}
            disabled={disabled}
            onClick={() => press(option)}
            onKeyDown={onKeyDown}
          >
            {field.options.length <= 9 && <kbd aria-hidden="true">{at + 1}</kbd>} {option}
            {field.kind === 'choice' && field.describe?.[option] && <small>{field.describe[option]}</small>}
          </button>
        ))}
      </div>
    </div>
  )
}

// One of a few, side by side: all choices in sight, large enough for a gloved finger. A radio group to keyboard and reader.
import type { ReactNode } from 'react'
import { Label, Radio, RadioGroup } from 'react-aria-components'
import './segmented.css'

type SegmentedProps<T extends string> = {
  label: string
  /** Shown above the choices; otherwise only spoken. */
  labelShown?: boolean
  value: T
  options: readonly { value: T; text: ReactNode }[]
  isDisabled?: boolean
  onChange: (value: T) => void
}

export function Segmented<T extends string>(props: SegmentedProps<T>) {
  const { label, labelShown = false, value, options, isDisabled = false, onChange } = props
  return (
    <RadioGroup
      className="segmented"
      orientation="horizontal"
      {...(labelShown ? {} : { 'aria-label': label })}
      value={value}
      isDisabled={isDisabled}
      onChange={chosen => {
        const option = options.find(one => one.value === chosen)
        if (option) onChange(option.value)
      }}
    >
      {labelShown && <Label className="segmented-label">{label}</Label>}
      <div className="segmented-options">
        {options.map(option => (
          <Radio key={option.value} value={option.value} className="segment">
            {option.text}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  )
}

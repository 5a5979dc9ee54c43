// Distance driven, or running hours of a stationary or marine engine. What is typed is what is stored.
import { useState } from 'react'
import { formatDistance } from '../../shared/units/format.ts'
import { parseDistance } from '../../shared/units/parse.ts'
import type { Distance } from '../../shared/units/quantity.ts'
import { useUnits } from '../api/use-settings.ts'
import { QuantityField } from './quantity-field.tsx'

const units = ['km', 'mi', 'h'] as const

type OdometerFieldProps = {
  value: Distance | undefined
  onChange: (value: Distance | undefined) => void
  onWrong: (isWrong: boolean) => void
}

export function OdometerField({ value, onChange, onWrong }: OdometerFieldProps) {
  const usual = useUnits().distance
  const [unit, setUnit] = useState(value?.unit ?? usual)
  return (
    <QuantityField
      label={unit === 'h' ? 'Running hours' : 'Odometer'}
      unit={unit}
      units={units}
      onUnit={text => {
        const next = units.find(one => one === text) ?? unit
        setUnit(next)
        // The number was read off the instrument: another unit corrects it, it does not convert it.
        if (value) onChange({ value: value.value, unit: next })
      }}
      value={value}
      format={one => formatDistance(one, one.unit)}
      parse={text => parseDistance(text, unit)}
      onChange={onChange}
      onWrong={onWrong}
      question={one =>
        one.unit !== 'h' && one.value > 1_500_000 ? 'That is a great distance. Is it right?' : undefined
      }
    />
  )
}

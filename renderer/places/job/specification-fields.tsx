// Limits typed from the vehicle's service information; each one that is typed wins over the general rule.
import type { Specification } from '../../../shared/gauges/specification-schema.ts'
import { formatPressure, formatVacuum } from '../../../shared/units/format.ts'
import { parseNumber, parsePressure, parseVacuum } from '../../../shared/units/parse.ts'
import { useUnits } from '../../api/use-settings.ts'
import { QuantityField } from '../../parts/quantity-field.tsx'

type Fields = {
  value: Specification
  onChange: (specification: Specification) => void
  mark: (name: string) => (isWrong: boolean) => void
}

const pressures = {
  compressionMinimum: 'Least compression',
  compressionMaximum: 'Highest compression',
  compressionSpread: 'Compression spread, at most',
  fuelPressureMinimum: 'Least fuel pressure',
  fuelPressureMaximum: 'Highest fuel pressure',
  fuelPressureFall: 'Fuel pressure may fall by',
} as const
const vacuums = { idleVacuumMinimum: 'Least idle vacuum', idleVacuumMaximum: 'Highest idle vacuum' } as const
const numbers = {
  compressionRatio: { label: 'Compression ratio', unit: ': 1', least: 4, most: 25 },
  leakDownMaximum: { label: 'Leak-down, at most', unit: '%', least: 0, most: 100 },
  holdMinutes: { label: 'Fuel pressure held for', unit: 'min', least: 0.1, most: 1440 },
} as const

const keysOf = <K extends string>(record: Readonly<Record<K, unknown>>): K[] => {
  const keys: K[] = []
  for (const key in record) keys.push(key)
  return keys
}

export function SpecificationFields({ value, onChange, mark }: Fields) {
  const units = useUnits()
  const set = <K extends keyof Specification>(key: K, quantity: Specification[K]) => {
    const next = { ...value, [key]: quantity }
    if (quantity === undefined) delete next[key]
    onChange(next)
  }
  return (
    <details open={Object.keys(value).length > 0}>
      <summary>Limits from the vehicle&rsquo;s service information</summary>
      <p className="field-remark">
        Each one typed here wins over the general rule. Left empty, the rule counts.
      </p>
      <div className="job-quantities">
        {keysOf(pressures).map(key => (
          <QuantityField
            key={key}
            label={pressures[key]}
            unit={units.pressure}
            value={value[key]}
            format={one => formatPressure(one, units.pressure)}
            parse={text => parsePressure(text, units.pressure)}
            onWrong={mark(key)}
            onChange={quantity => set(key, quantity)}
          />
        ))}
        {keysOf(vacuums).map(key => (
          <QuantityField
            key={key}
            label={vacuums[key]}
            unit={units.vacuum}
            value={value[key]}
            format={one => formatVacuum(one, units.vacuum)}
            parse={text => parseVacuum(text, units.vacuum)}
            onWrong={mark(key)}
            onChange={quantity => set(key, quantity)}
          />
        ))}
        {keysOf(numbers).map(key => (
          <QuantityField
            key={key}
            label={numbers[key].label}
            unit={numbers[key].unit}
            value={value[key]}
            format={one => `${one} ${numbers[key].unit}`}
            parse={text => {
              const number = parseNumber(text)
              const { least, most } = numbers[key]
              return number !== null && number >= least && number <= most ? number : null
            }}
            onWrong={mark(key)}
            onChange={quantity => set(key, quantity)}
          />
        ))}
      </div>
    </details>
  )
}

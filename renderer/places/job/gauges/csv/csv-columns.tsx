// Which column holds what, and in which units; guessed first, for the person to put right.
import type { CsvSeparator, CsvTable } from '../../../../../shared/contract/readings-csv-contract.ts'
import { type CsvTest, csvFields } from '../../../../../shared/gauges/readings-csv-fields.ts'
import type { CsvMapping } from '../../../../../shared/gauges/readings-csv-in.ts'

type CsvColumnsProps = {
  table: CsvTable
  test: CsvTest
  mapping: CsvMapping
  onChange: (mapping: CsvMapping) => void
  onSeparator: (separator: CsvSeparator) => void
}

const separators: readonly CsvSeparator[] = ['comma', 'semicolon', 'tab']

export function CsvColumns({ table, test, mapping, onChange, onSeparator }: CsvColumnsProps) {
  const width = Math.max(0, ...table.rows.map(({ cells }) => cells.length))
  const columns = Array.from({ length: width }, (_, at) => ({
    at,
    name: `${at + 1}: ${table.rows[Math.max(0, mapping.firstRow - 1)]?.cells[at] ?? ''}`.slice(0, 40),
  }))
  const fields = csvFields[test]
  const has = (kind: 'pressure' | 'vacuum') => fields.some(field => field.kind === kind)
  const pick = (label: string, value: number | null, set: (at: number | null) => void, optional: boolean) => (
    <label key={label} className="field">
      <span className="field-label">{label}</span>
      <select
        value={value ?? ''}
        onChange={event => set(event.target.value === '' ? null : Number(event.target.value))}
      >
        <option value="">{optional ? 'in no column' : 'choose a column'}</option>
        {columns.map(({ at, name }) => (
          <option key={at} value={at}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
  return (
    <div className="csv-columns">
      <label className="field">
        <span className="field-label">Separator</span>
        <select
          value={table.separator}
          onChange={event => {
            const chosen = separators.find(one => one === event.target.value)
            if (chosen) onSeparator(chosen)
          }}
        >
          {separators.map(one => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
      <label className="field">
        <span className="field-label">Readings begin in line</span>
        <select
          value={mapping.firstRow}
          onChange={event => onChange({ ...mapping, firstRow: Number(event.target.value) })}
        >
          {table.rows.slice(0, 10).map(({ line }, at) => (
            <option key={line} value={at}>
              {line}
            </option>
          ))}
        </select>
      </label>
      {pick('Cylinder', mapping.cylinder, cylinder => onChange({ ...mapping, cylinder }), false)}
      {fields.map(({ name, label, required }) =>
        pick(
          label,
          mapping.fields[name] ?? null,
          at => onChange({ ...mapping, fields: { ...mapping.fields, [name]: at } }),
          required !== true,
        ),
      )}
      {has('pressure') && (
        <label className="field">
          <span className="field-label">Pressures are in</span>
          <select
            value={mapping.units.pressure}
            onChange={event => {
              const unit = (['psi', 'kPa', 'bar'] as const).find(one => one === event.target.value)
              if (unit) onChange({ ...mapping, units: { ...mapping.units, pressure: unit } })
            }}
          >
            <option>psi</option>
            <option>kPa</option>
            <option>bar</option>
          </select>
        </label>
      )}
      {has('vacuum') && (
        <label className="field">
          <span className="field-label">Vacuums are in</span>
          <select
            value={mapping.units.vacuum}
            onChange={event => {
              const unit = (['inHg', 'kPa'] as const).find(one => one === event.target.value)
              if (unit) onChange({ ...mapping, units: { ...mapping.units, vacuum: unit } })
            }}
          >
            <option>inHg</option>
            <option>kPa</option>
          </select>
        </label>
      )}
    </div>
  )
}

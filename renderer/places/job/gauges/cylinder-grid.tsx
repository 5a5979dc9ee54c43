// The grid of a test made cylinder by cylinder: a row each, in the order chosen. Enter goes on and keeps complete rows.
import { Fragment, useState } from 'react'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { Bar } from './bar.tsx'
import { CylinderHead } from './cylinder-head.tsx'
import { ChoiceButtons } from './entry/choice-buttons.tsx'
import { ChoiceSelect } from './entry/choice-select.tsx'
import { EntryField } from './entry/entry-field.tsx'
import { type Field, isWrong, severalChosen } from './entry/field.ts'
import { spoken } from './entry/form-field.tsx'
import { nextField } from './entry/walk.ts'
import { PullChips } from './pull-chips.tsx'
import { pullWords } from './pull-words.ts'
import { pullsOn } from './pulls-on.ts'
import type { TypedCylinders } from './use-typed-cylinders.ts'

export function CylinderGrid({ entry }: { entry: TypedCylinders }) {
  const { job, tray, order, selected, readOnly } = useJobPage()
  const units = useUnits()
  const [active, setActive] = useState<number>()
  const { columns, test } = entry
  // More fields take the room of the pictures.
  const pictures = entry.more ? undefined : test.pictures?.(job, tray.stage)
  const cylinders = [...new Set(order.map(slot => slot.cylinder))]
  const chosen = new Set(selected.map(one => one.cylinder))
  return (
    <div className="gauge-scroll">
      <table className="gauge-table" data-walk data-more={entry.more}>
        <caption className="visually-hidden">
          {test.test}, {tray.stage}
        </caption>
        <thead>
          <tr>
            <th scope="col">Cyl</th>
            {columns.map(column => (
              <th key={column.name} scope="col">
                {column.title}
                {column.unit && ` (${column.unit})`}
              </th>
            ))}
            <th scope="col">Pulls</th>
            {pictures && <th scope="col">{pictures.title}</th>}
          </tr>
        </thead>
        <tbody>
          {cylinders.map(cylinder => {
            const picture = pictures?.bars.get(cylinder)
            return (
              <Fragment key={cylinder}>
                <tr data-chosen={chosen.has(cylinder)} onFocus={() => setActive(cylinder)}>
                  <CylinderHead cylinder={cylinder} />
                  {columns.map((column, at) => (
                    <td key={column.name}>
                      <Cell
                        entry={entry}
                        field={column}
                        cylinder={cylinder}
                        isLast={at === columns.length - 1}
                      />
                    </td>
                  ))}
                  <td>
                    <PullChips
                      pulls={pullsOn(job, test.test, tray.stage, cylinder)}
                      label={pull => pullWords(pull, units)}
                    />
                  </td>
                  {pictures && <td>{picture && <Bar {...picture} />}</td>}
                </tr>
                {active === cylinder &&
                  columns.map(
                    column =>
                      column.kind === 'several' && (
                        <tr key={column.name} className="several-row">
                          <td colSpan={columns.length + (pictures ? 3 : 2)}>
                            <ChoiceButtons
                              field={column}
                              label={spoken(column, `choices for cylinder ${cylinder}`)}
                              value={entry.row(cylinder)[column.name] ?? ''}
                              disabled={readOnly}
                              stops={false}
                              onChange={text => entry.type(cylinder, column.name, text)}
                            />
                          </td>
                        </tr>
                      ),
                  )}
              </Fragment>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

type CellProps = { entry: TypedCylinders; field: Field; cylinder: number; isLast: boolean }

function Cell({ entry, field, cylinder, isLast }: CellProps) {
  const { readOnly } = useJobPage()
  const value = entry.row(cylinder)[field.name] ?? ''
  const wrong = isWrong(field, value)
  const common = {
    label: spoken(field, `cylinder ${cylinder}`),
    disabled: readOnly,
    onEnter: (from: HTMLElement) => {
      if (wrong) return
      if (isLast) entry.keep(cylinder)
      nextField(from)
    },
  }
  const onChange = (text: string) => entry.type(cylinder, field.name, text)
  switch (field.kind) {
    case 'choice':
      return <ChoiceSelect {...common} field={field} value={value} onChange={onChange} />
    case 'several':
      return (
        <>
          <EntryField
            {...common}
            value={value.replaceAll(',', '')}
            wrong={wrong}
            onChange={text => onChange((text.match(/\d/g) ?? []).join(','))}
          />
          {value !== '' && (
            <small className="cell-words">{severalChosen(value, field.options).join(', ')}</small>
          )}
        </>
      )
    default:
      return (
        <EntryField
          {...common}
          value={value}
          wrong={wrong}
          letters={field.kind === 'text'}
          onChange={onChange}
        />
      )
  }
}

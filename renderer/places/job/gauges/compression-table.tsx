// Compression: any number of pulls a cylinder, first puff and final, dry and wet; bars with the common limit.
import { useState } from 'react'
import { compressionBars } from '../../../../shared/gauges/bars.ts'
import type { Pull } from '../../../../shared/job/pull-schema.ts'
import { formatPressure } from '../../../../shared/units/format.ts'
import { parsePressure } from '../../../../shared/units/parse.ts'
import { toPressure } from '../../../../shared/units/convert.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useNotices } from '../../../parts/notices.tsx'
import { useJobPage } from '../job-context.ts'
import { Bar } from './bar.tsx'
import { CylinderHead } from './cylinder-head.tsx'
import { EntryField } from './entry-field.tsx'
import { PullChips } from './pull-chips.tsx'

type Typed = { first: string; final: string }
const empty: Typed = { first: '', final: '' }

/** Above this a cranking pull is more likely a slip of the hand or the wrong unit. */
const unusualPsi = 400

export function CompressionTable() {
  const { job, tray, order, selected, apply, readOnly } = useJobPage()
  const { pressure: unit } = useUnits()
  const { say } = useNotices()
  const [typed, setTyped] = useState<Readonly<Record<number, Typed>>>({})
  const [wet, setWet] = useState(false)
  const bars = compressionBars(job, tray.stage)
  const values = new Map(bars.values.map(value => [value.cylinder, value]))
  const highest = Math.max(0, ...[...values.values()].map(value => value.dry ?? 0))
  const full = Math.max(highest, ...[...values.values()].map(value => value.wet ?? 0), 1) * 1.08
  const cylinders = [...new Set(order.map(slot => slot.cylinder))]
  const chosen = new Set(selected.map(one => one.cylinder))

  const keep = async (cylinder: number) => {
    const { first, final } = typed[cylinder] ?? empty
    const parsedFinal = parsePressure(final, unit)
    const parsedFirst = first.trim() === '' ? undefined : parsePressure(first, unit)
    if (!parsedFinal || parsedFirst === null) return
    setTyped(now => ({ ...now, [cylinder]: empty }))
    const done = await apply({
      command: 'add pull',
      pull: {
        id: crypto.randomUUID(),
        test: 'compression',
        stage: tray.stage,
        cylinder,
        at: new Date().toISOString(),
        entry: {
          final: parsedFinal,
          ...(parsedFirst ? { firstPuff: parsedFirst } : {}),
          ...(wet ? { wet: true } : {}),
        },
      },
    })
    if (!done) setTyped(now => ({ ...now, [cylinder]: { first, final } }))
    else if (toPressure(parsedFinal, 'psi') > unusualPsi)
      say(
        `${formatPressure(parsedFinal, unit)} on cylinder ${cylinder} is unusual. It is kept; void it if it was a slip.`,
      )
    else if (parsedFirst && toPressure(parsedFirst, 'psi') > toPressure(parsedFinal, 'psi'))
      say(`First puff above final on cylinder ${cylinder}. It is kept; void it if it was a slip.`)
  }

  const label = (pull: Pull): string => {
    if (pull.test !== 'compression') return ''
    const { firstPuff, final, wet: isWet } = pull.entry
    return `${firstPuff ? `${formatPressure(firstPuff, unit)} → ` : ''}${formatPressure(final, unit)}${isWet ? ' wet' : ''}`
  }

  return (
    <div>
      <label className="check">
        <input
          type="checkbox"
          checked={wet}
          disabled={readOnly}
          onChange={event => setWet(event.target.checked)}
        />
        The next pulls are wet (oil added). Give a good cylinder the same oil too.
      </label>
      <table className="gauge-table">
        <caption className="visually-hidden">Compression pulls, {tray.stage}</caption>
        <thead>
          <tr>
            <th scope="col">Cyl</th>
            <th scope="col">First puff ({unit})</th>
            <th scope="col">Final ({unit})</th>
            <th scope="col">Pulls</th>
            <th scope="col">
              Final, first puff inside
              {bars.limits.length > 0 && `; lines: ${bars.limits.map(one => one.label).join(', ')}`}
            </th>
          </tr>
        </thead>
        <tbody>
          {cylinders.map(cylinder => {
            const now = typed[cylinder] ?? empty
            const value = values.get(cylinder)
            const pulls = job.pulls.filter(
              pull => pull.test === 'compression' && pull.stage === tray.stage && pull.cylinder === cylinder,
            )
            return (
              <tr key={cylinder} data-chosen={chosen.has(cylinder)}>
                <CylinderHead cylinder={cylinder} />
                <td>
                  <EntryField
                    label={`First puff, cylinder ${cylinder}, ${unit}`}
                    value={now.first}
                    wrong={now.first.trim() !== '' && parsePressure(now.first, unit) === null}
                    disabled={readOnly}
                    onChange={first => setTyped(all => ({ ...all, [cylinder]: { ...now, first } }))}
                    onEnter={() => undefined}
                  />
                </td>
                <td>
                  <EntryField
                    label={`Final, cylinder ${cylinder}, ${unit}`}
                    value={now.final}
                    wrong={now.final.trim() !== '' && parsePressure(now.final, unit) === null}
                    disabled={readOnly}
                    onChange={final => setTyped(all => ({ ...all, [cylinder]: { ...now, final } }))}
                    onEnter={() => void keep(cylinder)}
                  />
                </td>
                <td>
                  <PullChips pulls={pulls} label={label} />
                </td>
                <td>
                  {value?.dry !== undefined && (
                    <Bar
                      value={value.dry}
                      full={full}
                      inner={value.firstPuff}
                      wet={value.wet}
                      plusMinus={value.plusMinus}
                      limits={bars.limits}
                      label={`Cylinder ${cylinder}: ${formatPressure({ value: value.dry, unit: 'psi' }, unit)}`}
                    />
                  )}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

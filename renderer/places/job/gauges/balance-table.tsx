// Cylinder balance: speed before and after each cut-out, vacuum if it was read; bars of the drop from its own baseline.
import { useState } from 'react'
import { balanceRules } from '../../../../shared/gauges/balance-share.ts'
import { balanceBars } from '../../../../shared/gauges/bars.ts'
import type { Pull } from '../../../../shared/job/pull-schema.ts'
import { formatVacuum } from '../../../../shared/units/format.ts'
import { parseNumber, parseVacuum } from '../../../../shared/units/parse.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { Bar } from './bar.tsx'
import { CylinderHead } from './cylinder-head.tsx'
import { EntryField } from './entry-field.tsx'
import { PullChips } from './pull-chips.tsx'

const fields = ['rpmBefore', 'rpmAfter', 'vacuumBefore', 'vacuumAfter'] as const
type Field = (typeof fields)[number]
type Typed = Partial<Record<Field, string>>

export function BalanceTable() {
  const { job, tray, order, selected, apply, readOnly } = useJobPage()
  const { vacuum: unit } = useUnits()
  const [typed, setTyped] = useState<Readonly<Record<number, Typed>>>({})
  const values = new Map(balanceBars(job, tray.stage).values.map(value => [value.cylinder, value]))
  const drops = [...values.values()].map(value => value.drop)
  const full = Math.max(...drops, 1) * 1.08
  const cylinders = [...new Set(order.map(slot => slot.cylinder))]
  const chosen = new Set(selected.map(one => one.cylinder))
  const labels: Record<Field, string> = {
    rpmBefore: 'rpm before',
    rpmAfter: 'rpm after',
    vacuumBefore: `vacuum before (${unit})`,
    vacuumAfter: `vacuum after (${unit})`,
  }
  const rpm = (text: string | undefined): number | null => {
    const value = parseNumber(text ?? '')
    return value !== null && value >= 0 && value <= 20_000 ? value : null
  }
  const isWrong = (field: Field, text: string | undefined): boolean =>
    (text ?? '').trim() !== '' &&
    (field.startsWith('rpm') ? rpm(text) === null : parseVacuum(text ?? '', unit) === null)

  const keep = async (cylinder: number) => {
    const now = typed[cylinder] ?? {}
    const [before, after] = [rpm(now.rpmBefore), rpm(now.rpmAfter)]
    if (before === null || after === null || fields.some(field => isWrong(field, now[field]))) return
    const vacuumBefore = parseVacuum(now.vacuumBefore ?? '', unit)
    const vacuumAfter = parseVacuum(now.vacuumAfter ?? '', unit)
    setTyped(all => ({ ...all, [cylinder]: {} }))
    const done = await apply({
      command: 'add pull',
      pull: {
        id: crypto.randomUUID(),
        test: 'balance',
        stage: tray.stage,
        cylinder,
        at: new Date().toISOString(),
        entry: {
          rpmBefore: before,
          rpmAfter: after,
          ...(vacuumBefore ? { vacuumBefore } : {}),
          ...(vacuumAfter ? { vacuumAfter } : {}),
        },
      },
    })
    if (!done) setTyped(all => ({ ...all, [cylinder]: now }))
  }
  const label = (pull: Pull): string => {
    if (pull.test !== 'balance') return ''
    const { rpmBefore, rpmAfter, vacuumBefore, vacuumAfter } = pull.entry
    const vacuum =
      vacuumBefore && vacuumAfter
        ? `, ${formatVacuum(vacuumBefore, unit)} → ${formatVacuum(vacuumAfter, unit)}`
        : ''
    return `${rpmBefore} → ${rpmAfter}\u00a0rpm${vacuum}`
  }

  return (
    <div className="gauge-scroll">
      <table className="gauge-table">
        <caption className="visually-hidden">Cut-outs, {tray.stage}</caption>
        <thead>
          <tr>
            <th scope="col">Cyl</th>
            {fields.map(field => (
              <th key={field} scope="col">
                {labels[field]}
              </th>
            ))}
            <th scope="col">Cut-outs</th>
            <th scope="col">Drop, line at {balanceRules.weakShare} % of the others’ middle</th>
          </tr>
        </thead>
        <tbody>
          {cylinders.map(cylinder => {
            const now = typed[cylinder] ?? {}
            const value = values.get(cylinder)
            return (
              <tr key={cylinder} data-chosen={chosen.has(cylinder)}>
                <CylinderHead cylinder={cylinder} />
                {fields.map(field => (
                  <td key={field}>
                    <EntryField
                      label={`${labels[field]}, cylinder ${cylinder}`}
                      value={now[field] ?? ''}
                      wrong={isWrong(field, now[field])}
                      disabled={readOnly}
                      onChange={text => setTyped(all => ({ ...all, [cylinder]: { ...now, [field]: text } }))}
                      onEnter={() => {
                        if (field === 'vacuumAfter') void keep(cylinder)
                      }}
                    />
                  </td>
                ))}
                <td>
                  <PullChips
                    pulls={job.pulls.filter(
                      pull =>
                        pull.test === 'balance' && pull.stage === tray.stage && pull.cylinder === cylinder,
                    )}
                    label={label}
                  />
                </td>
                <td>
                  {value && (
                    <Bar
                      value={value.drop}
                      full={full}
                      plusMinus={value.plusMinus}
                      limits={
                        value.limit === undefined
                          ? []
                          : [
                              {
                                at: value.limit,
                                label: `${balanceRules.weakShare} % of the others’ middle drop`,
                              },
                            ]
                      }
                      label={`Cylinder ${cylinder}: drop ${Math.round(value.drop)} rpm`}
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

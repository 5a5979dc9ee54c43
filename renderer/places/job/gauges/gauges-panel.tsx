// The Gauges work area: one test at a time, with its caution and steps, its entries, pictures and verdicts.
import { type ReactNode, useState } from 'react'
import { deference, gauges } from '../../../../shared/gauges/gauges.ts'
import type { TestKind } from '../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { OrderSwitch } from '../order-switch.tsx'
import { BalanceTable } from './balance-table.tsx'
import { CompressionTable } from './compression-table.tsx'
import './gauges-panel.css'
import { VacuumTable } from './vacuum-table.tsx'
import { Verdicts } from './verdicts.tsx'

const tables: Partial<Record<TestKind, () => ReactNode>> = {
  compression: CompressionTable,
  balance: BalanceTable,
  vacuum: VacuumTable,
}

export function GaugesPanel() {
  const { job, tray } = useJobPage()
  const units = useUnits()
  const [test, setTest] = useState<TestKind>('compression')
  const gauge = gauges.find(one => one.test === test)
  if (!gauge) return null
  const Table = tables[test] ?? (() => null)
  const verdicts = gauge.judge(job, tray.stage, units)
  return (
    <div className="gauges-panel">
      <div className="row">
        <div className="row" role="group" aria-label="Test">
          {gauges.map(one => (
            <button
              key={one.test}
              type="button"
              className="tag-filter"
              aria-pressed={one.test === test}
              onClick={() => setTest(one.test)}
            >
              {one.title}
            </button>
          ))}
        </div>
        <span className="grow" />
        {test !== 'vacuum' && <OrderSwitch label="Order of entry" />}
        <span className="quiet">readings go to: {tray.stage}</span>
      </div>
      <section className="caution" aria-label="Caution">
        <strong>Caution</strong>
        <ul>
          {gauge.cautions.map(text => (
            <li key={text}>{text}</li>
          ))}
          <li>{deference}</li>
        </ul>
      </section>
      <details>
        <summary>Steps</summary>
        <ol>
          {gauge.steps.map(text => (
            <li key={text}>{text}</li>
          ))}
        </ol>
      </details>
      <Table key={`${tray.id} ${test}`} />
      <Verdicts verdicts={verdicts} />
    </div>
  )
}

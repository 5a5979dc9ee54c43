// The pasted answers of service 06 as a table: each test with the value and the limits the vehicle sent.
import { decodeMode06, type TestState } from '../../../../shared/gauges/mode-06-decode.ts'
import { testName } from '../../../../shared/gauges/mode-06-monitors.ts'
import { scalingOf } from '../../../../shared/gauges/unit-and-scaling.ts'
import { validPulls } from '../../../../shared/job/current.ts'
import { formatNumber, withUnit } from '../../../../shared/units/format.ts'
import { StateGlyph } from '../../../parts/state-glyph.tsx'
import { useJobPage } from '../job-context.ts'

const glyphs = { pass: 'sound', fail: 'fault', 'not run': 'unknown' } as const satisfies Record<
  TestState,
  string
>

export function Mode06Table() {
  const { job, tray } = useJobPage()
  const newest = validPulls(job, 'mode 06', tray.stage).at(-1)
  if (!newest) return null
  const { tests, problems } = decodeMode06(newest.entry.hex)
  return (
    <section aria-label="Newest answers, decoded">
      {tests.length > 0 && (
        <div className="gauge-scroll">
          <table className="gauge-table">
            <caption className="visually-hidden">Newest answers, decoded</caption>
            <thead>
              <tr>
                <th scope="col">Test</th>
                <th scope="col">Value</th>
                <th scope="col">Least</th>
                <th scope="col">Most</th>
                <th scope="col">By the vehicle’s limits</th>
              </tr>
            </thead>
            <tbody>
              {tests.map(test => {
                const show = (value: number) =>
                  withUnit(formatNumber(value, scalingOf(test.uas).digits), test.unit)
                return (
                  <tr key={`${test.line} ${test.mid} ${test.tid}`}>
                    <th scope="row">{testName(test.mid, test.tid)}</th>
                    <td>{show(test.value)}</td>
                    <td>{test.open ? 'none' : show(test.min)}</td>
                    <td>{test.open ? 'none' : show(test.max)}</td>
                    <td>
                      <StateGlyph state={glyphs[test.state]} size={14} /> {test.state}
                      {test.open && ', no limits sent'}
                    </td>
                  </tr>
                )
              })}
            </tbody>
          </table>
        </div>
      )}
      {problems.map(({ line, reason }) => (
        <p key={`${line} ${reason}`} className="field-error">
          Line {line}: {reason}.
        </p>
      ))}
    </section>
  )
}

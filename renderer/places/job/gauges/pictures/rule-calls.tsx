// Where the published limits contradict each other on these readings: what each rule set would call, and whose is used.
import { differingCalls } from '../../../../../shared/gauges/differing-calls.ts'
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { useJobPage } from '../../job-context.ts'

export function RuleCalls({ test }: { test: TestKind }) {
  const { job, tray, apply, readOnly } = useJobPage()
  const units = useUnits()
  const differing = differingCalls(job, tray.stage, units).filter(one => one.test === test)
  if (differing.length === 0) return null
  return (
    <details className="rule-calls">
      <summary>Published limits differ on these readings ({differing.length})</summary>
      {differing.map(one => {
        const where = one.cylinder === undefined ? 'Engine' : `Cylinder ${one.cylinder}`
        return (
          <table key={`${one.kind} ${where}`} className="plain-table">
            <caption>
              {where}, {one.subject}
            </caption>
            <thead>
              <tr>
                <th scope="col">Rule set</th>
                <th scope="col">Calls it</th>
                <th scope="col">Limit</th>
                <th scope="col">Source</th>
                <th scope="col">This job</th>
              </tr>
            </thead>
            <tbody>
              {one.calls.map(call => (
                <tr key={call.id}>
                  <th scope="row">{call.title}</th>
                  <td>{call.verdict}</td>
                  <td>{call.limit}</td>
                  <td className="quiet">{call.source}</td>
                  <td>
                    {call.id === one.chosen ? (
                      <strong>judged by this</strong>
                    ) : (
                      <button
                        type="button"
                        className="tag-filter"
                        disabled={readOnly}
                        aria-label={`Use for ${one.subject}: ${call.title}`}
                        onClick={() =>
                          void apply({
                            command: 'set circumstances',
                            circumstances: {
                              ...job.circumstances,
                              rules: { ...job.circumstances.rules, [one.kind]: call.id },
                            },
                          })
                        }
                      >
                        Use
                      </button>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )
      })}
    </details>
  )
}

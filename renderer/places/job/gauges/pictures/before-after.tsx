// As found beside after the work, for this test: what had failed, what it is now, and how far it moved.
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { beforeAfter, type Standing } from '../../../../../shared/writeup/before-after.ts'
import { proofOf } from '../../../../../shared/writeup/proof.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { useJobPage } from '../../job-context.ts'

const standingWords: Readonly<Record<Standing, string>> = {
  met: 'in order',
  'not met': 'still not in order',
  open: 'open',
}

/** The same rows and the same word on the proof as in the write-up; nothing before a repair is written down. */
export function BeforeAfter({ test }: { test: TestKind }) {
  const { job } = useJobPage()
  const units = useUnits()
  if (!job.repair) return null
  const rows = beforeAfter(job, units).filter(row => row.what.startsWith(`${test}, `))
  const [opening] = proofOf(job, units)
  return (
    <section className="before-after" aria-label="Before and after the work">
      <h3>Before and after the work</h3>
      {opening !== undefined && <p>{opening}</p>}
      {rows.length > 0 && (
        <table className="plain-table">
          <caption className="visually-hidden">What had failed in this test</caption>
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col">Rule</th>
              <th scope="col">As found</th>
              <th scope="col">After the work</th>
              <th scope="col">Difference</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(row => (
              <tr key={`${row.what} ${row.where}`}>
                <th scope="row">{row.where}</th>
                <td>{row.what.slice(test.length + 2)}</td>
                <td className="number">{row.before}</td>
                <td className="number">{row.after}</td>
                <td className="number">{row.difference ?? ''}</td>
                <td>{standingWords[row.standing]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}

// Before and after of a correction that is not yet made, and the verdicts that it would change.
import { asCorrected } from '../../../../../shared/job/current.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { pullWords } from '../pull-words.ts'
import type { CorrectionPreview } from '../../../../../shared/gauges/preview-correction.ts'
import { whereOf } from './where-of.ts'

export function CorrectionEffect({ preview }: { preview: CorrectionPreview }) {
  const units = useUnits()
  return (
    <div className="correction-effect">
      <table className="plain-table">
        <caption>Readings before and after</caption>
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col">Before</th>
            <th scope="col">After</th>
          </tr>
        </thead>
        <tbody>
          {preview.pulls.map(({ before, after }) => (
            <tr key={before.id}>
              <th scope="row">{whereOf(before)}</th>
              <td className="number">{pullWords(asCorrected(before), units)}</td>
              <td className="number">{pullWords(asCorrected(after), units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {preview.untouched.length > 0 && (
        <p className="quiet">
          Stay as they are, since this changes nothing in them:{' '}
          {preview.untouched.map(one => `${whereOf(one)} ${pullWords(asCorrected(one), units)}`).join('; ')}.
        </p>
      )}
      {preview.changes.length === 0 ? (
        <p>No verdict changes.</p>
      ) : (
        <table className="plain-table">
          <caption>Verdicts that change</caption>
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col">Rule</th>
              <th scope="col">Before</th>
              <th scope="col">After</th>
            </tr>
          </thead>
          <tbody>
            {preview.changes.map((one, at) => (
              // oxlint-disable-next-line react/no-array-index-key -- two changes may share place and rule; no state in it
              <tr key={`${one.where} ${one.rule} ${at}`}>
                <th scope="row">{one.where}</th>
                <td>{one.rule}</td>
                <td>{one.before}</td>
                <td>
                  <strong>{one.after}</strong>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}

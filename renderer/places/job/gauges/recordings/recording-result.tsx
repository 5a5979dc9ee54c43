// What a recording says: the marked picture, the values as a table, the remarks, and the rows that could not be read.
import type {
  RecordingAnalysis,
  RecordingTestKind,
} from '../../../../../shared/contract/recordings-contract.ts'
import { recordingGuides } from '../../../../../shared/recordings/recording-guide.ts'
import { RecordingPicture } from './recording-picture.tsx'
import { RecordingValues } from './recording-values.tsx'

export function RecordingResult({
  analysis,
  test,
}: {
  analysis: RecordingAnalysis
  test: RecordingTestKind
}) {
  const { entry, remarks, wrongRows, firstWrongRows, rows } = analysis
  const guide = recordingGuides[test]
  return (
    <div className="recording-result">
      <RecordingPicture analysis={analysis} marked={guide.marked} />
      {entry && <RecordingValues entry={entry} percentOf={guide.percentOf} />}
      {remarks.length > 0 && (
        <ul className="recording-remarks" aria-label="Remarks">
          {remarks.map(remark => (
            <li key={remark.code}>{remark.text}</li>
          ))}
        </ul>
      )}
      {wrongRows > 0 && (
        <details>
          <summary>
            {wrongRows.toLocaleString('en')} of {(rows + wrongRows).toLocaleString('en')} rows could not be
            read
          </summary>
          <table className="gauge-table">
            <caption className="visually-hidden">The first rows that could not be read</caption>
            <thead>
              <tr>
                <th scope="col">Line</th>
                <th scope="col">Why</th>
                <th scope="col">As written</th>
              </tr>
            </thead>
            <tbody>
              {firstWrongRows.map(row => (
                <tr key={row.line}>
                  <th scope="row">{row.line}</th>
                  <td>{row.why}</td>
                  <td>
                    <code>{row.text}</code>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </div>
  )
}

// The first samples of each column, headed by its name and what it is taken for.
import type {
  RecordingMapping,
  RecordingPreview,
} from '../../../../../shared/contract/recordings-contract.ts'

const shownRows = 5

function use(at: number, { timeColumn, valueColumn, syncColumn, value }: RecordingMapping): string {
  const uses = [
    at === timeColumn && value !== 'tooth interval' && value !== 'tooth time' ? 'time' : '',
    at === valueColumn ? value : '',
    at === syncColumn ? 'sync' : '',
  ].filter(text => text !== '')
  return uses.length > 0 ? uses.join(', ') : 'not used'
}

export function ColumnsPreview({
  preview,
  mapping,
}: {
  preview: RecordingPreview
  mapping: RecordingMapping
}) {
  const rows = Math.min(shownRows, Math.max(0, ...preview.columns.map(column => column.samples.length)))
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- a wide table has to be scrolled by keyboard
    <div className="recording-preview" role="region" aria-label="First samples" tabIndex={0}>
      <table className="gauge-table">
        <caption className="visually-hidden">First samples of the file</caption>
        <thead>
          <tr>
            {preview.columns.map((column, at) => (
              // oxlint-disable-next-line react/no-array-index-key -- a column is its place
              <th key={at} scope="col">
                {at + 1}: {column.name === '' ? 'no name' : column.name}
                {column.unit !== '' && !column.name.includes(column.unit) && ` (${column.unit})`}
                <br />
                <strong>{use(at, mapping)}</strong>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: rows }, (_, row) => (
            // oxlint-disable-next-line react/no-array-index-key -- a row is its place
            <tr key={row}>
              {preview.columns.map((column, at) => (
                // oxlint-disable-next-line react/no-array-index-key -- a column is its place
                <td key={at} className="number">
                  {column.samples[row] ?? ''}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <details>
        <summary>The first lines as written</summary>
        <pre>{preview.lines.join('\n')}</pre>
      </details>
    </div>
  )
}

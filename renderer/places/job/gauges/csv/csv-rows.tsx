// The rows of a table as they will be taken, and each that cannot be, with its line, what is wrong and what to do.
import type { CsvTable } from '../../../../../shared/contract/readings-csv-contract.ts'
import type { CsvMapping, CsvOutcome } from '../../../../../shared/gauges/readings-csv-in.ts'
import { pullWords } from '../../../../../shared/job/command-label.ts'

type CsvRowsProps = { table: CsvTable; mapping: CsvMapping; outcome: CsvOutcome }

const shownRows = 40

export function CsvRows({ table, mapping, outcome: { readings, wrong } }: CsvRowsProps) {
  const cells = new Map(table.rows.map(row => [row.line, row.cells.join(' | ')]))
  return (
    <>
      <p role="status">
        {readings.length} of {table.rows.length - mapping.firstRow} rows can be taken
        {wrong.length > 0 ? `, ${wrong.length} cannot.` : '.'}
      </p>
      {wrong.length > 0 && (
        <ul className="csv-wrong" aria-label="Rows that cannot be taken">
          {wrong.map(({ line, what, hint }) => (
            <li key={line}>
              <strong>Line {line}:</strong> {what} {hint}
            </li>
          ))}
        </ul>
      )}
      <div className="csv-table">
        <table className="gauge-table">
          <caption className="visually-hidden">Readings to be taken</caption>
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">As written</th>
              <th scope="col">Becomes</th>
            </tr>
          </thead>
          <tbody>
            {readings.slice(0, shownRows).map(({ line, reading }) => (
              <tr key={line}>
                <td>{line}</td>
                <td>{cells.get(line)}</td>
                <td>{pullWords({ ...reading, id: 'preview', stage: 'as found', at: '' })}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {readings.length > shownRows && (
          <p className="quiet">and {readings.length - shownRows} more rows like these.</p>
        )}
      </div>
    </>
  )
}

// The values of a recording as a table with bars: by cylinder where they are named, else by position.
import type { RecordingEntry } from '../../../../../shared/gauges/recording-entry.ts'
import { Bar } from '../bar.tsx'

/** "3", or "position 2" where a sync signal was missing. */
const nameOf = (value: RecordingEntry['values'][number]): string =>
  value.cylinder === undefined ? `Position ${value.position}` : `Cylinder ${value.cylinder}`

/** What the others are shares of has no interval of its own: theirs hold its uncertainty. */
const intervalOf = ({ percent, plusMinus }: RecordingEntry['values'][number]): string => {
  if (plusMinus === undefined) return 'unknown'
  return plusMinus < 0.05 && percent === 100 ? 'the reference' : `${plusMinus.toFixed(1)} %`
}

export function RecordingValues({ entry, percentOf }: { entry: RecordingEntry; percentOf: string }) {
  const full = Math.max(100, ...entry.values.map(value => value.percent + (value.plusMinus ?? 0))) * 1.02
  const sorted = entry.values.toSorted((a, b) => (a.cylinder ?? a.position) - (b.cylinder ?? b.position))
  return (
    <table className="gauge-table">
      <caption>
        {entry.cycles ?? 0} cycles{entry.rpm === undefined ? '' : ` at ${Math.round(entry.rpm)} rpm`}; percent{' '}
        {percentOf}, with the interval that holds 95 of 100
        {entry.synced ? '' : '; positions in firing order from the first mark'}
      </caption>
      <thead>
        <tr>
          <th scope="col">{entry.synced ? 'Cylinder' : 'Position'}</th>
          <th scope="col">Percent</th>
          <th scope="col">Plus or minus</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {sorted.map(value => (
          <tr key={value.position}>
            <th scope="row">{value.cylinder ?? value.position}</th>
            <td className="number">{value.percent.toFixed(1)} %</td>
            <td className="number">{intervalOf(value)}</td>
            <td>
              <Bar
                value={Math.max(0, value.percent)}
                full={full}
                plusMinus={value.plusMinus}
                label={`${nameOf(value)}: ${value.percent.toFixed(1)} percent`}
              />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

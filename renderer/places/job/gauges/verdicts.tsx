// What the readings say, the notable first, each with its limit, its reason and where the rule was read.
import type { GaugeVerdict, Verdict } from '../../../../shared/gauges/verdict.ts'

const rank: Record<Verdict, number> = { outside: 0, 'cannot be called': 1, watch: 2, noted: 3, within: 4 }

export function Verdicts({ verdicts }: { verdicts: readonly GaugeVerdict[] }) {
  if (verdicts.length === 0) return null
  const sorted = verdicts.toSorted((a, b) => rank[a.verdict] - rank[b.verdict])
  return (
    <section aria-label="Verdicts">
      <h2>Verdicts</h2>
      <ul className="verdict-list">
        {sorted.map(one => (
          <li key={`${one.rule} ${one.cylinder ?? ''}`} data-verdict={one.verdict}>
            <p>
              <strong>
                {one.cylinder === undefined ? 'Engine' : `Cylinder ${one.cylinder}`}, {one.rule}:{' '}
                {one.verdict}
              </strong>{' '}
              <span className="number">
                {one.value}
                {one.plusMinus ? ` ± ${one.plusMinus}` : ''} {one.unit}
              </span>
            </p>
            <p>{one.why}</p>
            <p className="quiet">
              Limit: {one.limit}. [{one.source}]
            </p>
          </li>
        ))}
      </ul>
    </section>
  )
}

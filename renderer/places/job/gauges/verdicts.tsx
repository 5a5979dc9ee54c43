// What the readings say. First and plainly what speaks of the readings themselves, then of the engine, the notable first.
import type { GaugeVerdict, Verdict } from '../../../../shared/gauges/verdict.ts'

const rank: Record<Verdict, number> = { outside: 0, 'cannot be called': 1, watch: 2, noted: 3, within: 4 }

export function Verdicts({ verdicts }: { verdicts: readonly GaugeVerdict[] }) {
  if (verdicts.length === 0) return null
  const sorted = verdicts.toSorted((a, b) => rank[a.verdict] - rank[b.verdict])
  const ofReading = sorted.filter(one => one.about === 'reading')
  const fine = ofReading.filter(one => one.verdict === 'within')
  const ofEngine = sorted.filter(one => one.about !== 'reading')
  return (
    <section className="verdicts" aria-label="Verdicts">
      <h2>Verdicts</h2>
      {ofReading.length > 0 && (
        <>
          <h3>Can the readings be trusted?</h3>
          <VerdictList verdicts={ofReading.filter(one => one.verdict !== 'within')} />
          {fine.length > 0 && (
            <details>
              <summary>{fine.length} within: nothing speaks against these readings</summary>
              <VerdictList verdicts={fine} />
            </details>
          )}
        </>
      )}
      {ofEngine.length > 0 && (
        <>
          {ofReading.length > 0 && <h3>What they say of the engine</h3>}
          <VerdictList verdicts={ofEngine} />
        </>
      )}
    </section>
  )
}

function VerdictList({ verdicts }: { verdicts: readonly GaugeVerdict[] }) {
  return (
    <ul className="verdict-list">
      {verdicts.map((one, at) => (
        // Two verdicts may share rule and cylinder, so the place tells them apart; the list holds no state.
        // oxlint-disable-next-line react/no-array-index-key -- see above
        <li key={`${one.rule} ${one.cylinder ?? ''} ${at}`} data-verdict={one.verdict}>
          <p>
            <strong>
              {one.cylinder === undefined ? 'Engine' : `Cylinder ${one.cylinder}`}, {one.rule}: {one.verdict}
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
  )
}

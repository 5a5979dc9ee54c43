// What is known of each cylinder and the evidence behind it, the engine as a whole first. Causes with probabilities are
// not part of this version; the panel says so instead of guessing.
import type { State } from '../../../../shared/diagnosis/evidence.ts'
import { slotsOf } from '../../../../shared/engine/slots.ts'
import { gauges } from '../../../../shared/gauges/gauges.ts'
import { StateWord } from '../../../parts/state-glyph.tsx'
import { useJobPage } from '../job-context.ts'
import './causes-panel.css'

/** Title of the test a piece of evidence comes from; without one it was read from the plug. */
const sourceOf = (from: string): string => gauges.find(one => one.test === from)?.title ?? 'Plug'

const worstFirst: Readonly<Record<State, number>> = { fault: 0, watch: 1, sound: 2, unknown: 3 }

export function CausesPanel() {
  const { job, states, selected, select } = useJobPage()
  const chosen = new Set(selected.map(one => one.cylinder))
  const ranked = states.toSorted(
    (a, b) => worstFirst[a.state] - worstFirst[b.state] || a.cylinder - b.cylinder,
  )
  const nothing = states.every(one => one.state === 'unknown')
  return (
    <div className="causes-panel">
      <p className="quiet">
        Worst cylinder first; each shows the worst of what is known, with its evidence. This version does not
        yet weigh causes against each other or rank the next test.
      </p>
      {nothing && (
        <p className="card">
          Nothing is known yet. Tag the plugs or type gauge readings, and the evidence gathers here.
        </p>
      )}
      <ul className="causes-list">
        {ranked.map(one => (
          <li key={one.cylinder} className="card" data-chosen={chosen.has(one.cylinder)}>
            <button
              type="button"
              className="causes-head"
              aria-pressed={chosen.has(one.cylinder)}
              onClick={() => {
                const slot = slotsOf(job.layout).find(address => address.cylinder === one.cylinder)
                if (slot) select(slot, 'only')
              }}
            >
              <strong>Cylinder {one.cylinder}</strong> <StateWord state={one.state} />
              <span className="quiet">{one.headline}</span>
            </button>
            {one.evidence.length > 0 && (
              <ul className="evidence">
                {one.evidence.map(evidence => (
                  <li key={evidence.from + evidence.text}>
                    <StateWord state={evidence.state} /> <strong>{sourceOf(evidence.from)}:</strong>
                    <span>
                      {evidence.text}
                      {evidence.next !== '' && <em> Next: {evidence.next}</em>}
                    </span>
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </div>
  )
}

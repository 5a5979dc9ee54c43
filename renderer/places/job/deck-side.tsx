// The left side of a job: which removal is looked at, the deck, and what the engine as a whole says.
import { Route as FiringIcon } from 'lucide-react'
import { useState } from 'react'
import { engineRemarks } from '../../../shared/diagnosis/engine-remarks.ts'
import { findSlot } from '../../../shared/job/current.ts'
import { Deck } from '../../parts/deck/deck.tsx'
import { useJobPage } from './job-context.ts'
import { TrayActions } from './tray-actions.tsx'

export function DeckSide() {
  const { job, tray, setTray, states, selected, select } = useJobPage()
  const [showFiring, setShowFiring] = useState(false)
  const remarks = engineRemarks(job, tray.stage)
  return (
    <section className="deck-side" aria-label="Deck">
      <div className="row">
        <div className="stage-switch" role="group" aria-label="Tray">
          {job.trays.map(one => (
            <button
              key={one.id}
              type="button"
              className="tag-filter"
              aria-pressed={one.id === tray.id}
              onClick={() => setTray(one.id)}
            >
              {one.name}
            </button>
          ))}
        </div>
        <TrayActions />
        <span className="grow" />
        <button
          type="button"
          className="tag-filter deck-firing-toggle"
          aria-pressed={showFiring}
          title={job.layout.firingOrder.join('-')}
          onClick={() => setShowFiring(!showFiring)}
        >
          <FiringIcon aria-hidden="true" /> Firing path
        </button>
      </div>
      <div className="deck-frame">
        <Deck
          layout={job.layout}
          states={states}
          photoOf={slot => findSlot(tray, slot)?.shots[0]?.photo}
          selected={selected}
          onSelect={select}
          showFiring={showFiring}
        />
      </div>
      <p className="deck-caption quiet">
        {job.layout.name}. {showFiring && `Fires ${job.layout.firingOrder.join('-')}.`}
      </p>
      {remarks.length > 0 && (
        <section className="card deck-remarks" aria-label="The engine as a whole">
          <h2>The engine as a whole</h2>
          <ul>
            {remarks.map(remark => (
              <li key={remark.kind + remark.text}>
                {remark.text} <span className="quiet">[{remark.source}]</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </section>
  )
}

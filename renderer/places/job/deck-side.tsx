// The left side of a job: which removal is looked at, the deck, and what the engine as a whole says.
import { Route as FiringIcon } from 'lucide-react'
import { useState } from 'react'
import { engineRemarks } from '../../../shared/diagnosis/engine-remarks.ts'
import { findSlot } from '../../../shared/job/current.ts'
import { useUnits } from '../../api/use-settings.ts'
import { Deck } from '../../parts/deck/deck.tsx'
import { Segmented } from '../../parts/segmented.tsx'
import { coverShot } from './cover-shot.ts'
import { EngineRemarks } from './engine-remarks.tsx'
import { useJobPage } from './job-context.ts'
import { TrayActions } from './tray-actions.tsx'

export function DeckSide() {
  const { job, tray, setTray, states, selected, select } = useJobPage()
  const [showFiring, setShowFiring] = useState(false)
  return (
    <section className="deck-side" aria-label="Deck">
      <div className="deck-tools">
        {job.trays.length > 1 ? (
          <Segmented
            label="Tray"
            value={tray.id}
            options={job.trays.map(one => ({ value: one.id, text: one.name }))}
            onChange={setTray}
          />
        ) : (
          <strong>{tray.name}</strong>
        )}
        <TrayActions />
        <span className="grow" />
        <button
          type="button"
          className="tag-filter"
          aria-pressed={showFiring}
          title={`Firing order ${job.layout.firingOrder.join('-')}`}
          onClick={() => setShowFiring(!showFiring)}
        >
          <FiringIcon aria-hidden="true" /> Firing path
        </button>
      </div>
      <div className="deck-frame" title={job.layout.name}>
        <Deck
          layout={job.layout}
          states={states}
          photoOf={slot => coverShot(findSlot(tray, slot))?.photo}
          selected={selected}
          onSelect={select}
          showFiring={showFiring}
        />
      </div>
      <EngineRemarks remarks={engineRemarks(job, tray.stage, useUnits())} />
    </section>
  )
}

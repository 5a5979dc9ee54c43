// The pulls made so far. None is ever deleted: pressing one voids it with a reason, or makes a voided one count again.
import { useState } from 'react'
import { asCorrected } from '../../../../shared/job/current.ts'
import type { Pull } from '../../../../shared/job/pull-schema.ts'
import { Button } from '../../../parts/button.tsx'
import { Dialog } from '../../../parts/dialog.tsx'
import { useJobPage } from '../job-context.ts'

type PullChipsProps = { pulls: readonly Pull[]; label: (pull: Pull) => string }

const reasons = [
  'misread the gauge',
  'wrong cylinder',
  'adapter leaked',
  'battery was low',
  'throttle was shut',
]

export function PullChips({ pulls, label: asMade }: PullChipsProps) {
  const { job, apply, readOnly } = useJobPage()
  const [chosen, setChosen] = useState<Pull>()
  const [reason, setReason] = useState('')
  const tester = job.instruments?.find(one => one.id === chosen?.instrument)
  const label = (pull: Pull): string =>
    `${asMade(asCorrected(pull))}${isCorrected(pull) ? ' (corrected)' : ''}`
  const close = () => {
    setChosen(undefined)
    setReason('')
  }
  return (
    <div className="pulls">
      {pulls.map(pull => (
        <button
          key={pull.id}
          type="button"
          className="pull"
          data-voided={pull.voided !== undefined}
          disabled={readOnly}
          title={pull.voided ? `voided: ${pull.voided.reason}` : 'press to void'}
          aria-label={`${label(pull)}${pull.voided ? `, voided: ${pull.voided.reason}` : ''}`}
          onClick={() => setChosen(pull)}
        >
          {label(pull)}
        </button>
      ))}
      {chosen && (
        <Dialog title={chosen.voided ? 'A voided pull' : 'Void this pull?'} onClose={close}>
          <p className="number">
            {label(chosen)}, entered {chosen.at.slice(0, 16).replace('T', ' ')}
            {chosen.by ? ` by ${chosen.by}` : ''}
            {tester ? `, read with ${tester.name}` : ''}
          </p>
          {chosen.voided ? (
            <>
              <p>
                Voided {chosen.voided.at.slice(0, 16).replace('T', ' ')}: {chosen.voided.reason}
              </p>
              <div className="dialog-buttons">
                <Button onPress={close}>Leave it</Button>
                <Button
                  kind="main"
                  onPress={() => {
                    void apply({ command: 'unvoid pull', pullId: chosen.id })
                    close()
                  }}
                >
                  Count it again
                </Button>
              </div>
            </>
          ) : (
            <form
              className="void-form"
              onSubmit={event => {
                event.preventDefault()
                if (reason.trim() === '') return
                void apply({ command: 'void pull', pullId: chosen.id, reason: reason.trim() })
                close()
              }}
            >
              <p>It stays on record and no longer counts.</p>
              <div className="row">
                {reasons.map(one => (
                  <button
                    key={one}
                    type="button"
                    className="tag-filter"
                    aria-pressed={reason === one}
                    onClick={() => setReason(one)}
                  >
                    {one}
                  </button>
                ))}
              </div>
              <label className="field">
                <span className="field-label">Reason</span>
                <input value={reason} maxLength={400} onChange={event => setReason(event.target.value)} />
              </label>
              <div className="dialog-buttons">
                <Button onPress={close}>Leave it</Button>
                <Button type="submit" kind="main" isDisabled={reason.trim() === ''}>
                  Void the pull
                </Button>
              </div>
            </form>
          )}
        </Dialog>
      )}
    </div>
  )
}

/** Taken back again, the entry counts as it was made. */
function isCorrected(pull: Pull): boolean {
  const last = pull.corrections?.at(-1)
  return last !== undefined && last.how.kind !== 'as entered'
}

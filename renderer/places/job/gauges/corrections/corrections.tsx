// A gauge that was misread: choose pulls, say what was wrong and why, see what would change, and put them right in one go.
import { useMemo, useState } from 'react'
import type { Pull, TestKind } from '../../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { Button } from '../../../../parts/button.tsx'
import { useNotices } from '../../../../parts/notices.tsx'
import { useJobPage } from '../../job-context.ts'
import { pullsAt } from '../pulls-on.ts'
import { CorrectedPulls } from './corrected-pulls.tsx'
import { CorrectionEffect } from './correction-effect.tsx'
import { emptyDraft, howOf } from './correction-draft.ts'
import { CorrectionFields } from './correction-fields.tsx'
import './corrections.css'
import { enteredUnits } from './entered-units.ts'
import { isCorrectable, previewCorrection } from '../../../../../shared/gauges/preview-correction.ts'
import { PullChoice } from './pull-choice.tsx'

export function Corrections({ test }: { test: TestKind }) {
  const { job, tray, readOnly } = useJobPage()
  const [isOpen, setOpen] = useState(false)
  const all = pullsAt(job, test, tray.stage)
  const pulls = all.filter(one => one.voided === undefined && isCorrectable(one))
  if (pulls.length === 0) return null
  return (
    <section className="corrections" aria-label="Corrections">
      {!readOnly && (
        <Button aria-expanded={isOpen} onPress={() => setOpen(!isOpen)}>
          Gauge misread? Correct pulls
        </Button>
      )}
      {isOpen && !readOnly && <CorrectionForm pulls={pulls} onDone={() => setOpen(false)} />}
      <CorrectedPulls pulls={all} />
    </section>
  )
}

function CorrectionForm({ pulls, onDone }: { pulls: readonly Pull[]; onDone: () => void }) {
  const { job, tray, apply } = useJobPage()
  const { say } = useNotices()
  const units = useUnits()
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => new Set(pulls.map(one => one.id)))
  const [draft, setDraft] = useState(emptyDraft)
  const [reason, setReason] = useState('')
  const [isSending, setSending] = useState(false)
  const present = useMemo(
    () => new Set(pulls.filter(one => chosen.has(one.id)).map(one => one.id)),
    [pulls, chosen],
  )
  const entered = enteredUnits(pulls.filter(one => present.has(one.id)))
  const asked = useMemo(() => howOf(draft), [draft])
  const how = asked?.kind === 'offset' && entered.length > 1 ? undefined : asked
  const preview = useMemo(
    () => (how === undefined ? undefined : previewCorrection(job, tray.stage, present, how, units)),
    [job, tray.stage, present, how, units],
  )
  const count = preview?.pulls.length ?? 0
  const send = async () => {
    if (how === undefined || preview === undefined || count === 0 || reason.trim() === '') return
    setSending(true)
    const pullIds = preview.pulls.map(one => one.before.id)
    const isDone = await apply({ command: 'correct pulls', pullIds, how, reason: reason.trim() })
    setSending(false)
    if (!isDone) return
    say(`${count} ${count === 1 ? 'pull' : 'pulls'} corrected. Undo takes it back.`)
    onDone()
  }
  return (
    <form
      className="card correction-form"
      aria-label="Correct pulls"
      onSubmit={event => {
        event.preventDefault()
        void send()
      }}
    >
      <PullChoice pulls={pulls} instruments={job.instruments ?? []} chosen={present} onChange={setChosen} />
      <CorrectionFields draft={draft} units={entered} onChange={setDraft} />
      <label className="field">
        <span className="field-label">Reason</span>
        <input value={reason} maxLength={400} onChange={event => setReason(event.target.value)} />
      </label>
      {preview && <CorrectionEffect preview={preview} />}
      <div className="row">
        <Button onPress={onDone}>Leave them</Button>
        <Button type="submit" kind="main" isDisabled={isSending || count === 0 || reason.trim() === ''}>
          Correct {count} {count === 1 ? 'pull' : 'pulls'}
        </Button>
        {reason.trim() === '' && count > 0 && <span className="quiet">A reason is needed.</span>}
      </div>
    </form>
  )
}

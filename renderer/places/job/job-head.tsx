// The head of a job: vehicle, complaint, circumstances, what is saved, undo and redo.
import { useIsMutating } from '@tanstack/react-query'
import { Redo2, Undo2 } from 'lucide-react'
import { useState } from 'react'
import type { JobState } from '../../../shared/contract/contract.ts'
import { formatDistance } from '../../../shared/units/format.ts'
import { inWords } from '../../api/client.ts'
import { savingKey, useJobChange } from '../../api/use-jobs.ts'
import { useUnits } from '../../api/use-settings.ts'
import { Button } from '../../parts/button.tsx'
import { useNotices } from '../../parts/notices.tsx'
import { JobFactsDialog } from './job-facts-dialog.tsx'
import { useJobPage } from './job-context.ts'

export function JobHead({ state }: { state: JobState }) {
  const { job, readOnly } = useJobPage()
  const units = useUnits()
  const change = useJobChange(job.id)
  const { fail } = useNotices()
  const saving = useIsMutating({ mutationKey: savingKey }) > 0
  const [editing, setEditing] = useState(false)
  const move = (kind: 'undo' | 'redo') => change.mutate({ kind }, { onError: error => fail(inWords(error)) })
  const facts = [
    job.engine.vin && `VIN ${job.engine.vin}`,
    job.engine.odometer && formatDistance(job.engine.odometer, units.distance),
    job.technician,
    job.demo && 'invented demo job',
  ].filter(Boolean)
  return (
    <header className="job-head">
      <div className="job-title">
        <h1>{job.engine.vehicle || 'Engine without a name'}</h1>
        <p>{job.complaint || 'No complaint yet.'}</p>
        {facts.length > 0 && <p className="quiet">{facts.join(' · ')}</p>}
      </div>
      <p className="job-saved quiet" role="status">
        {saving
          ? 'saving …'
          : `saved ${new Date(job.updatedAt).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}`}
      </p>
      <Button isDisabled={readOnly} onPress={() => setEditing(true)}>
        Edit job
      </Button>
      <Button
        isDisabled={state.undo === null || readOnly}
        aria-label={state.undo ? `Undo ${state.undo}` : 'Undo'}
        onPress={() => move('undo')}
      >
        <Undo2 aria-hidden="true" /> Undo
      </Button>
      <Button
        isDisabled={state.redo === null || readOnly}
        aria-label={state.redo ? `Redo ${state.redo}` : 'Redo'}
        onPress={() => move('redo')}
      >
        <Redo2 aria-hidden="true" /> Redo
      </Button>
      {editing && <JobFactsDialog onClose={() => setEditing(false)} />}
    </header>
  )
}

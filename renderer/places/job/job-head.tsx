// The head of a job: vehicle, complaint (changed where it stands), facts, what is saved, undo and redo by name.
import { Redo2, Undo2 } from 'lucide-react'
import { useState } from 'react'
import type { JobState } from '../../../shared/contract/contract.ts'
import { formatDistance } from '../../../shared/units/format.ts'
import { inWords } from '../../api/client.ts'
import { useJobChange } from '../../api/use-jobs.ts'
import { useUnits } from '../../api/use-settings.ts'
import { Button } from '../../parts/button.tsx'
import { EditInPlace } from '../../parts/edit-in-place.tsx'
import { useNotices } from '../../parts/notices.tsx'
import { JobFactsDialog } from './job-facts-dialog.tsx'
import { useJobPage } from './job-context.ts'
import { SaveState } from './save-state.tsx'

export function JobHead({ state }: { state: JobState }) {
  const { job, apply, readOnly } = useJobPage()
  const units = useUnits()
  const change = useJobChange(job.id)
  const { fail } = useNotices()
  const [editing, setEditing] = useState(false)
  const move = (kind: 'undo' | 'redo') => change.mutate({ kind }, { onError: error => fail(inWords(error)) })
  const { vehicle, vin, odometer } = job.engine
  return (
    <header className="job-head">
      <div className="job-title">
        <h1>{vehicle || 'Engine without a name'}</h1>
        <EditInPlace
          label="Complaint"
          text={job.complaint}
          empty="No complaint yet"
          limit={4000}
          isDisabled={readOnly}
          onKeep={complaint => apply({ command: 'set complaint', complaint })}
        />
        <dl className="job-facts">
          {vin && <Fact name="VIN" text={vin} />}
          {odometer && (
            <Fact
              name={odometer.unit === 'h' ? 'Running' : 'Odometer'}
              text={formatDistance(odometer, units.distance)}
            />
          )}
          {job.technician && <Fact name="Technician" text={job.technician} />}
          {job.demo && <Fact name="Demo" text="invented job, rendered pictures" />}
          {job.archivedAt && <Fact name="Archived" text={job.archivedAt.slice(0, 10)} />}
        </dl>
      </div>
      <div className="job-tools">
        <SaveState updatedAt={job.updatedAt} />
        <StepButton
          name="Undo"
          step={state.undo}
          icon={Undo2}
          isDisabled={readOnly}
          onPress={() => move('undo')}
        />
        <StepButton
          name="Redo"
          step={state.redo}
          icon={Redo2}
          isDisabled={readOnly}
          onPress={() => move('redo')}
        />
        <Button isDisabled={readOnly} onPress={() => setEditing(true)}>
          Edit job
        </Button>
      </div>
      {editing && <JobFactsDialog onClose={() => setEditing(false)} />}
    </header>
  )
}

const Fact = ({ name, text }: { name: string; text: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{text}</dd>
  </div>
)

type StepButtonProps = {
  name: string
  /** What the step would take back or bring back; null when there is none. */
  step: string | null
  icon: typeof Undo2
  isDisabled: boolean
  onPress: () => void
}

function StepButton({ name, step, icon: Icon, isDisabled, onPress }: StepButtonProps) {
  return (
    <span title={step ? `${name} ${step}` : undefined}>
      <Button
        isDisabled={step === null || isDisabled}
        aria-label={step ? `${name} ${step}` : name}
        onPress={onPress}
      >
        <span className="step-button">
          <Icon aria-hidden="true" />
          <span>
            {name}
            {step && <small>{step}</small>}
          </span>
        </span>
      </Button>
    </span>
  )
}

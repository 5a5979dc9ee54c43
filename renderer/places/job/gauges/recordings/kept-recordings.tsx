// The recordings kept as pulls, each with its values, its picture drawn again on demand, and voiding as for any pull.
import { useState } from 'react'
import type {
  RecordingAnalysis,
  RecordingTestKind,
} from '../../../../../shared/contract/recordings-contract.ts'
import type { PullOf } from '../../../../../shared/job/pull-schema.ts'
import { recordingGuides } from '../../../../../shared/recordings/recording-guide.ts'
import { inWords } from '../../../../api/client.ts'
import { useHost } from '../../../../api/host-context.ts'
import { useTask } from '../../../../api/use-task.ts'
import { Button } from '../../../../parts/button.tsx'
import { ProgressStrip } from '../../../../parts/progress-strip.tsx'
import { useJobPage } from '../../job-context.ts'
import { PullChips } from '../pull-chips.tsx'
import { RecordingResult } from './recording-result.tsx'
import { RecordingValues } from './recording-values.tsx'

export function KeptRecordings({ test }: { test: RecordingTestKind }) {
  const { job, tray } = useJobPage()
  const kept = job.pulls.filter(
    (pull): pull is PullOf<RecordingTestKind> => pull.test === test && pull.stage === tray.stage,
  )
  if (kept.length === 0) return null
  return (
    <section aria-label="Kept recordings">
      <h3>Kept, {tray.stage}</h3>
      {kept.map(pull => (
        <KeptRecording key={pull.id} pull={pull} test={test} />
      ))}
    </section>
  )
}

function KeptRecording({ pull, test }: { pull: PullOf<RecordingTestKind>; test: RecordingTestKind }) {
  const { api } = useHost()
  const { job } = useJobPage()
  const [taskId, setTaskId] = useState<string>()
  const [analysis, setAnalysis] = useState<RecordingAnalysis>()
  const [problem, setProblem] = useState<string>()
  const entry = pull.corrections?.at(-1)?.entry ?? pull.entry
  const task = useTask(taskId, event => {
    setTaskId(undefined)
    if (event.kind === 'finished' && event.result.kind === 'recording') setAnalysis(event.result.analysis)
    if (event.kind === 'failed') setProblem(`${event.fault.what} ${event.fault.hint}`)
  })
  const draw = () => {
    setProblem(undefined)
    api.recordings
      .redraw({ jobId: job.id, pullId: pull.id })
      .then(started => setTaskId(started.taskId))
      .catch((failure: unknown) => setProblem(inWords(failure)))
  }
  const lowest = entry.values.toSorted((a, b) => a.percent - b.percent)[0]
  const name = `${entry.source.fileName}, ${entry.source.seconds.toFixed(1)} s`
  const label = () =>
    `${name}${lowest ? `: lowest ${lowest.percent.toFixed(0)} % (${lowest.cylinder === undefined ? `position ${lowest.position}` : `cylinder ${lowest.cylinder}`})` : ''}`
  return (
    <article className="card recording-kept" aria-label={name} data-voided={pull.voided !== undefined}>
      <div className="row">
        <PullChips pulls={[pull]} label={label} />
        <span className="grow" />
        {analysis ? (
          <Button onPress={() => setAnalysis(undefined)}>Hide the picture</Button>
        ) : (
          taskId === undefined && <Button onPress={draw}>Show the picture</Button>
        )}
      </div>
      {taskId !== undefined && <ProgressStrip event={task.event} what="Drawing" onCancel={task.cancel} />}
      {(problem ?? task.error) !== undefined && (
        <p className="field-error" role="alert">
          {problem ?? task.error}
        </p>
      )}
      {analysis ? (
        <RecordingResult analysis={analysis} test={test} />
      ) : (
        <>
          <RecordingValues entry={entry} percentOf={recordingGuides[test].percentOf} />
          {entry.remarks.length > 0 && (
            <ul className="recording-remarks" aria-label="Remarks">
              {entry.remarks.map(text => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          )}
        </>
      )}
    </article>
  )
}

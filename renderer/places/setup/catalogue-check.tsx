// Checks the catalogue: every document and photo against its hash, with progress, cancel and a report.
import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import type { CheckReport } from '../../../shared/contract/task-schema.ts'
import { inWords } from '../../api/client.ts'
import { useHost } from '../../api/host-context.ts'
import { useTask } from '../../api/use-task.ts'
import { Button } from '../../parts/button.tsx'
import { ProgressStrip } from '../../parts/progress-strip.tsx'

export function CatalogueCheck({ readOnly }: { readOnly: boolean }) {
  const { api } = useHost()
  const [taskId, setTaskId] = useState<string>()
  const [report, setReport] = useState<CheckReport>()
  const [problem, setProblem] = useState<string>()
  const task = useTask(taskId, event => {
    setTaskId(undefined)
    if (event.kind === 'finished' && event.result.kind === 'check') setReport(event.result.report)
    if (event.kind === 'failed') setProblem(event.fault.what)
  })
  const start = useMutation({
    mutationFn: (mend: boolean) => api.catalogue.check({ mend }),
    onMutate: () => {
      setReport(undefined)
      setProblem(undefined)
    },
    onSuccess: one => setTaskId(one.taskId),
    onError: error => setProblem(inWords(error)),
  })
  return (
    <>
      {taskId ? (
        <ProgressStrip event={task.event} what="Checking the catalogue" onCancel={task.cancel} />
      ) : (
        <>
          <Button onPress={() => start.mutate(false)}>Check the catalogue</Button>
          <Button isDisabled={readOnly} onPress={() => start.mutate(true)}>
            Check, and rebuild list and small pictures
          </Button>
        </>
      )}
      {(problem ?? task.error) && <p role="alert">{problem ?? task.error}</p>}
      {report && <Report report={report} />}
    </>
  )
}

function Report({ report }: { report: CheckReport }) {
  const open = report.problems.filter(one => !one.mended)
  return (
    <>
      <p role="status">
        {report.jobs} jobs and {report.photos} photos verified, {(report.bytesRead / 1e6).toFixed(1)} MB read.{' '}
        {open.length === 0 ? 'No problem is left.' : `${open.length} to look at.`}
      </p>
      <ul className="check-report">
        {report.problems.map(one => (
          <li key={`${one.kind} ${one.file}`}>
            <code>{one.file}</code>: {one.kind}. {one.what} {one.mended ? 'Put right.' : one.hint}
          </li>
        ))}
      </ul>
    </>
  )
}

// Puts the demonstration jobs into the catalogue, with progress and cancel.
import { useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import { inWords } from '../../api/client.ts'
import { useHost } from '../../api/host-context.ts'
import { useTask } from '../../api/use-task.ts'
import { Button } from '../../parts/button.tsx'
import { ProgressStrip } from '../../parts/progress-strip.tsx'

export function DemoLoader() {
  const { api } = useHost()
  const [taskId, setTaskId] = useState<string>()
  const task = useTask(taskId, () => setTaskId(undefined))
  const start = useMutation({ mutationFn: () => api.demo.load(), onSuccess: one => setTaskId(one.taskId) })
  const problem =
    task.error ??
    (start.error ? inWords(start.error) : undefined) ??
    (task.event?.kind === 'failed' ? task.event.fault.what : undefined)
  return (
    <>
      {taskId ? (
        <ProgressStrip event={task.event} what="Loading the demo jobs" onCancel={task.cancel} />
      ) : (
        <Button onPress={() => start.mutate()}>Load the demo jobs</Button>
      )}
      {problem && <p role="alert">{problem}</p>}
    </>
  )
}

// Long work on the host: its progress while it runs, how it ended, and cancelling it.
import { useCallback, useEffect, useState } from 'react'
import type { TaskEvent } from '../../shared/contract/task-schema.ts'
import { inWords } from './client.ts'
import { useHost } from './host-context.ts'

export type TaskView = { event: TaskEvent | undefined; error: string | undefined; cancel: () => void }

/** `onEnd` is called once, with the last event. */
export function useTask(taskId: string | undefined, onEnd: (event: TaskEvent) => void): TaskView {
  const { api } = useHost()
  const [event, setEvent] = useState<TaskEvent>()
  const [error, setError] = useState<string>()
  useEffect(() => {
    if (taskId === undefined) return undefined
    const stop = new AbortController()
    setEvent(undefined)
    setError(undefined)
    const watch = async () => {
      try {
        for await (const next of await api.tasks.watch({ taskId }, { signal: stop.signal })) {
          setEvent(next)
          if (next.kind !== 'progress') onEnd(next)
        }
      } catch (failure) {
        if (!stop.signal.aborted) setError(inWords(failure))
      }
    }
    void watch()
    return () => stop.abort()
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- the newest onEnd is not worth watching the task again
  }, [api, taskId])
  const cancel = useCallback(() => {
    if (taskId !== undefined)
      api.tasks.cancel({ taskId }).catch((failure: unknown) => setError(inWords(failure)))
  }, [api, taskId])
  return { event, error, cancel }
}

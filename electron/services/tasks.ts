// Long work: started with an id, watched as a stream, cancelled by its own call. Late watchers get the last state.
import { randomUUID } from 'node:crypto'
import type { TaskEvent, TaskResult } from '../../shared/contract/task-schema.ts'
import { FaultError } from './fault.ts'

export type TaskWork = (call: {
  signal: AbortSignal
  onProgress: (done: number, total: number, what: string) => void
}) => Promise<TaskResult>

type Task = { last: TaskEvent; ended: boolean; stop: AbortController; wake: Set<() => void> }

export type Tasks = {
  start: (work: TaskWork) => string
  /** Progress until the end or the signal; several steps may be told as one. Throws NOT_FOUND at once. */
  watch: (id: string, signal?: AbortSignal) => AsyncGenerator<TaskEvent>
  /** False when it had ended already. */
  cancel: (id: string) => boolean
  /** Cancels all and waits for them to stop. */
  close: () => Promise<void>
}

/** An ended task stays known for this long, so that a page that was reloaded still hears how it ended. */
const keptMs = 10 * 60_000

async function* follow(task: Task, signal?: AbortSignal): AsyncGenerator<TaskEvent> {
  let seen: TaskEvent | undefined
  let wake = () => {}
  let stopped = signal?.aborted === true
  const onEvent = () => wake()
  const onAbort = () => {
    stopped = true
    wake()
  }
  task.wake.add(onEvent)
  signal?.addEventListener('abort', onAbort, { once: true })
  try {
    for (;;) {
      if (stopped) return
      const { last } = task
      if (last !== seen) {
        seen = last
        yield last
        if (last.kind !== 'progress') return
      } else
        await new Promise<void>(resolve => {
          wake = resolve
          if (task.last !== seen || stopped) resolve()
        })
    }
  } finally {
    task.wake.delete(onEvent)
    signal?.removeEventListener('abort', onAbort)
  }
}

export function createTasks(onUnknown: (error: unknown) => FaultError): Tasks {
  const tasks = new Map<string, Task>()
  const running = new Set<Promise<void>>()

  const tell = (task: Task, event: TaskEvent) => {
    task.last = event
    task.ended = event.kind !== 'progress'
    for (const wake of task.wake) wake()
  }
  const known = (id: string): Task => {
    const task = tasks.get(id)
    if (task) return task
    throw new FaultError('NOT_FOUND', {
      what: 'This work is not known (any more).',
      where: `task ${id}`,
      hint: 'Start it again.',
    })
  }

  return {
    start(work) {
      const id = randomUUID()
      const stop = new AbortController()
      const task: Task = {
        last: { kind: 'progress', done: 0, total: 0, what: '' },
        ended: false,
        stop,
        wake: new Set(),
      }
      tasks.set(id, task)
      const run = work({
        signal: stop.signal,
        onProgress: (done, total, what) => tell(task, { kind: 'progress', done, total, what }),
      })
        .then(
          result => tell(task, { kind: 'finished', result }),
          (error: unknown) => {
            if (stop.signal.aborted) return tell(task, { kind: 'cancelled' })
            const { code, fault } = error instanceof FaultError ? error : onUnknown(error)
            tell(task, { kind: 'failed', code, fault })
          },
        )
        .finally(() => {
          running.delete(run)
          setTimeout(() => tasks.delete(id), keptMs).unref()
        })
      running.add(run)
      return id
    },
    watch: (id, signal) => follow(known(id), signal),
    cancel(id) {
      const task = known(id)
      if (task.ended) return false
      task.stop.abort(new DOMException('The person cancelled.', 'AbortError'))
      return true
    },
    async close() {
      for (const task of tasks.values())
        if (!task.ended) task.stop.abort(new DOMException('Closing.', 'AbortError'))
      await Promise.allSettled(running)
    },
  }
}

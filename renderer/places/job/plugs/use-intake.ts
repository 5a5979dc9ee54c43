// Adding photos: files are handed to the host, then imported as one task with progress and cancel.
import { useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import type { FileOutcome, TaskEvent } from '../../../../shared/contract/task-schema.ts'
import type { SlotAddress } from '../../../../shared/job/command-schema.ts'
import { inWords } from '../../../api/client.ts'
import { useHost } from '../../../api/host-context.ts'
import { keys } from '../../../api/use-jobs.ts'
import { useTask } from '../../../api/use-task.ts'
import { filesIn } from './files-in-drop.ts'

export type Intake = {
  add: (files: File[], to?: SlotAddress) => void
  addDropped: (data: DataTransfer) => Promise<void>
  /** While files are handed over or imported. */
  busy: { event: TaskEvent | undefined; what: string; cancel: () => void } | undefined
  outcomes: readonly FileOutcome[] | undefined
  problem: string | undefined
  clear: () => void
}

const uploadsAtOnce = 3

export function useIntake(jobId: string, trayId: string): Intake {
  const host = useHost()
  const cache = useQueryClient()
  const [taskId, setTaskId] = useState<string>()
  const [sending, setSending] = useState<{ done: number; total: number }>()
  const [outcomes, setOutcomes] = useState<readonly FileOutcome[]>()
  const [problem, setProblem] = useState<string>()
  const stop = useRef<AbortController | undefined>(undefined)
  const task = useTask(taskId, event => {
    setTaskId(undefined)
    if (event.kind === 'finished' && event.result.kind === 'intake') setOutcomes(event.result.files)
    if (event.kind === 'failed') setProblem(`${event.fault.what} ${event.fault.hint}`)
    if (event.kind === 'cancelled') setProblem('Cancelled. No photo was added.')
    void cache.invalidateQueries({ queryKey: keys.job(jobId) })
  })

  const send = async (files: File[], to: SlotAddress | undefined) => {
    const controller = new AbortController()
    stop.current = controller
    setOutcomes(undefined)
    setProblem(undefined)
    setSending({ done: 0, total: files.length })
    const refs: string[] = Array.from({ length: files.length })
    const unsendable: FileOutcome[] = []
    const queue = files.entries()
    let done = 0
    const sender = async () => {
      for (const [at, file] of queue) {
        controller.signal.throwIfAborted()
        try {
          refs[at] = await host.upload(file, controller.signal)
        } catch (error) {
          if (controller.signal.aborted) throw error
          unsendable.push({ outcome: 'refused', file: file.name, why: inWords(error) })
        }
        done += 1
        setSending({ done, total: files.length })
      }
    }
    try {
      await Promise.all(Array.from({ length: uploadsAtOnce }, sender))
      const sent = refs.filter(ref => ref !== undefined)
      if (unsendable.length > 0) setOutcomes(unsendable)
      if (sent.length > 0) {
        const started = await host.api.intake.start({ jobId, trayId, refs: sent, ...(to ? { to } : {}) })
        setTaskId(started.taskId)
      }
    } catch (error) {
      setProblem(controller.signal.aborted ? 'Cancelled. No photo was added.' : inWords(error))
    } finally {
      setSending(undefined)
    }
  }

  const add = (files: File[], to?: SlotAddress) => {
    if (files.length === 0) return
    if (taskId !== undefined || sending) setProblem('An import is still running: wait for it or cancel it.')
    else void send(files, to)
  }
  const busy = taskId
    ? { event: task.event, what: 'Taking photos in', cancel: task.cancel }
    : sending
      ? {
          event: { kind: 'progress' as const, done: sending.done, total: sending.total, what: '' },
          what: 'Handing photos over',
          cancel: () => stop.current?.abort(),
        }
      : undefined
  return {
    add,
    async addDropped(data) {
      add(await filesIn(data))
    },
    busy,
    outcomes,
    problem: problem ?? task.error,
    clear: () => {
      setOutcomes(undefined)
      setProblem(undefined)
    },
  }
}

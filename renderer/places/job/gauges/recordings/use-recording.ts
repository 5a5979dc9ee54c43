// A recording on its way into the job: handed over, its columns confirmed, evaluated, kept or dropped.
import { useEffect, useRef, useState } from 'react'
import type {
  RecordingAnalysis,
  RecordingMapping,
  RecordingPreview,
  RecordingTestKind,
  RecordingWritten,
} from '../../../../../shared/contract/recordings-contract.ts'
import type { TaskEvent } from '../../../../../shared/contract/task-schema.ts'
import { inWords } from '../../../../api/client.ts'
import { useHost } from '../../../../api/host-context.ts'
import { useTask } from '../../../../api/use-task.ts'
import { useJobPage } from '../../job-context.ts'

type Waiting = { ref: string; preview: RecordingPreview; mapping: RecordingMapping }

export type RecordingStage =
  | { at: 'nothing' }
  | { at: 'sending'; name: string }
  | ({ at: 'columns' } & Waiting)
  | ({ at: 'evaluating'; taskId: string } & Waiting)
  /** `stored`: the file is in the catalogue already, only the pull is not in the job yet. */
  | ({ at: 'result'; analysis: RecordingAnalysis; keeping: boolean; stored: boolean } & Waiting)

export type RecordingWork = {
  stage: RecordingStage
  problem: string | undefined
  event: TaskEvent | undefined
  add: (file: File) => void
  /** Stops what is under way; the step before is shown again. */
  cancel: () => void
  setMapping: (mapping: RecordingMapping) => void
  /** Looks at the file again with another separator or decimal sign. */
  readAs: (written: RecordingWritten) => void
  evaluate: () => void
  back: () => void
  keep: () => void
  discard: () => void
}

export function useRecording(test: RecordingTestKind): RecordingWork {
  const { api, upload } = useHost()
  const { job, tray, apply } = useJobPage()
  const [stage, setStage] = useState<RecordingStage>({ at: 'nothing' })
  const [problem, setProblem] = useState<string>()
  const stop = useRef<AbortController | undefined>(undefined)
  const task = useTask(stage.at === 'evaluating' ? stage.taskId : undefined, event => {
    if (stage.at !== 'evaluating') return
    const { ref, preview, mapping } = stage
    const waiting = { ref, preview, mapping }
    if (event.kind === 'finished' && event.result.kind === 'recording')
      setStage({ ...waiting, at: 'result', analysis: event.result.analysis, keeping: false, stored: false })
    else {
      setStage({ ...waiting, at: 'columns' })
      if (event.kind === 'failed') setProblem(`${event.fault.what} ${event.fault.hint}`)
    }
  })

  const send = async (file: File) => {
    const controller = new AbortController()
    stop.current = controller
    setProblem(undefined)
    setStage({ at: 'sending', name: file.name })
    let ref: string | undefined
    try {
      ref = await upload(file, controller.signal)
      const preview = await api.recordings.preview({ source: { ref }, test }, { signal: controller.signal })
      setStage({ at: 'columns', ref, preview, mapping: preview.guess })
    } catch (error) {
      if (ref !== undefined) void api.recordings.discard({ ref }).catch(() => undefined)
      setStage({ at: 'nothing' })
      if (!controller.signal.aborted) setProblem(inWords(error))
    }
  }

  const evaluate = async (waiting: Waiting) => {
    setProblem(undefined)
    try {
      const { taskId } = await api.recordings.analyse({
        jobId: job.id,
        source: { ref: waiting.ref },
        fileName: waiting.preview.fileName,
        test,
        mapping: waiting.mapping,
      })
      setStage({ ...waiting, at: 'evaluating', taskId })
    } catch (error) {
      setProblem(inWords(error))
    }
  }

  const drop = (ref: string) => {
    void api.recordings.discard({ ref }).catch(() => undefined)
    setStage({ at: 'nothing' })
    setProblem(undefined)
  }

  const keep = async (waiting: Waiting, analysis: RecordingAnalysis, isStored: boolean) => {
    const { entry } = analysis
    if (!entry) return
    setProblem(undefined)
    let stored = isStored
    setStage({ ...waiting, at: 'result', analysis, keeping: true, stored })
    try {
      // The file first: a pull never names a recording that is not there.
      if (!stored) await api.recordings.keep({ ref: waiting.ref })
      stored = true
      const pull = { id: crypto.randomUUID(), test, stage: tray.stage, at: new Date().toISOString(), entry }
      if (await apply({ command: 'add pull', pull })) setStage({ at: 'nothing' })
      else setStage({ ...waiting, at: 'result', analysis, keeping: false, stored })
    } catch (error) {
      setStage({ ...waiting, at: 'result', analysis, keeping: false, stored })
      setProblem(inWords(error))
    }
  }

  // Left on the way, the file need not wait for its hour.
  const latest = useRef(stage)
  useEffect(() => {
    latest.current = stage
  }, [stage])
  useEffect(
    () => () => {
      const left = latest.current
      if (left.at === 'sending') stop.current?.abort()
      const isWaiting = left.at === 'columns' || (left.at === 'result' && !left.keeping && !left.stored)
      if (isWaiting) void api.recordings.discard({ ref: left.ref }).catch(() => undefined)
    },
    [api],
  )

  return {
    stage,
    problem: problem ?? (stage.at === 'evaluating' ? task.error : undefined),
    event: stage.at === 'evaluating' ? task.event : undefined,
    add: file => void send(file),
    cancel: () => {
      if (stage.at === 'sending') stop.current?.abort()
      if (stage.at === 'evaluating') task.cancel()
    },
    setMapping: mapping => {
      if (stage.at === 'columns') setStage({ ...stage, mapping })
    },
    readAs: written => {
      if (stage.at !== 'columns') return
      const { ref } = stage
      setProblem(undefined)
      api.recordings
        .preview({ source: { ref }, test, written })
        .then(preview => setStage({ at: 'columns', ref, preview, mapping: preview.guess }))
        .catch((error: unknown) => setProblem(inWords(error)))
    },
    evaluate: () => {
      if (stage.at === 'columns') void evaluate(stage)
    },
    back: () => {
      if (stage.at !== 'result' || stage.stored) return
      const { ref, preview, mapping } = stage
      setStage({ at: 'columns', ref, preview, mapping })
    },
    keep: () => {
      if (stage.at !== 'result' || stage.keeping) return
      const { ref, preview, mapping, analysis, stored } = stage
      void keep({ ref, preview, mapping }, analysis, stored)
    },
    discard: () => {
      if (stage.at === 'columns') drop(stage.ref)
      if (stage.at !== 'result') return
      if (stage.stored) setStage({ at: 'nothing' })
      else drop(stage.ref)
    },
  }
}

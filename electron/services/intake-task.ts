// An import as a task: photos go into the store one by one, the job changes by one command at the end or not at all.
import { randomUUID } from 'node:crypto'
import type { SlotAddress } from '../../shared/job/command-schema.ts'
import { FaultError } from './fault.ts'
import { takeIn } from './intake/intake.ts'
import type { JobSessions } from './job-sessions.ts'
import type { Catalogue } from './store/catalogue.ts'
import type { TaskWork } from './tasks.ts'
import type { WaitingFiles } from './waiting-files.ts'

export type IntakeRequest = { jobId: string; trayId: string; refs: string[]; to?: SlotAddress | undefined }

type Parts = { catalogue: Catalogue; jobs: JobSessions; files: WaitingFiles }

/** What to run. Throws NOT_FOUND and READ_ONLY at once, before a file is touched. */
export async function intakeWork(
  { catalogue, jobs, files }: Parts,
  { jobId, trayId, refs, to }: IntakeRequest,
): Promise<TaskWork> {
  if (catalogue.readOnly !== null)
    throw new FaultError('READ_ONLY', {
      what: 'The catalogue can only be read here.',
      where: `job ${jobId}`,
      hint: catalogue.readOnly,
    })
  const { job } = await jobs.get(jobId)
  if (!job.trays.some(tray => tray.id === trayId))
    throw new FaultError('NOT_FOUND', {
      what: 'There is no such tray.',
      where: `tray ${trayId}`,
      hint: 'Open the job again.',
    })
  const waiting = files.take(refs)
  return async ({ signal, onProgress }) => {
    try {
      const { shots, outcomes } = await takeIn(
        {
          files: waiting,
          job,
          photos: catalogue.photos,
          newId: randomUUID,
          now: () => new Date().toISOString(),
        },
        { signal, onProgress: ({ done, total, what }) => onProgress(done, total, what) },
      )
      signal.throwIfAborted()
      // One command for the whole import: it is in, or nothing of it is.
      if (shots.length > 0)
        await jobs.apply(jobId, { command: 'add shots', trayId, shots, ...(to ? { to } : {}) })
      return { kind: 'intake', jobId, trayId, files: outcomes }
    } finally {
      await files.discard(waiting)
    }
  }
}

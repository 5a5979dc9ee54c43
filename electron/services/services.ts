// Everything the app can do, on one open catalogue: put together here, served by both hosts and the command line.
import { randomUUID } from 'node:crypto'
import type { CatalogueStatus, Change } from '../../shared/contract/contract.ts'
import type { SlotAddress } from '../../shared/job/command-schema.ts'
import { loadDemo } from './demo/load-demo.ts'
import { createExports, type Exports } from './exports.ts'
import { FaultError } from './fault.ts'
import { takeIn } from './intake/intake.ts'
import { createJobSessions, type JobSessions } from './job-sessions.ts'
import type { Log } from './log.ts'
import type { Catalogue } from './store/catalogue.ts'
import { type Disk, realDisk } from './store/disk.ts'
import { createTasks, type Tasks } from './tasks.ts'
import { createWaitingFiles, type WaitingFiles } from './waiting-files.ts'

export type Services = {
  catalogue: Catalogue
  jobs: JobSessions
  tasks: Tasks
  files: WaitingFiles
  exports: Exports
  log: Log
  status: () => CatalogueStatus
  /** Task ids. */
  startIntake: (request: IntakeRequest) => Promise<string>
  startCheck: (mend: boolean) => string
  startDemo: () => string
  onChange: (listener: (change: Change) => void) => () => void
  tell: (change: Change) => void
  close: () => Promise<void>
}

export type IntakeRequest = { jobId: string; trayId: string; refs: string[]; to?: SlotAddress | undefined }

export type ServicesOptions = {
  host: CatalogueStatus['host']
  appVersion: string
  log: Log
  /** Folder of the demonstration jobs. */
  demoFolder: string
  disk?: Disk
}

export function createServices(catalogue: Catalogue, options: ServicesOptions): Services {
  const { log } = options
  const jobs = createJobSessions(catalogue)
  const tasks = createTasks(error => unknownFault(error, log))
  const files = createWaitingFiles(catalogue.folder, options.disk ?? realDisk)
  const listeners = new Set<(change: Change) => void>()
  const tell = (change: Change) => {
    for (const listener of listeners) listener(change)
  }
  const forget = catalogue.onChange(tell)

  return {
    catalogue,
    jobs,
    tasks,
    files,
    exports: createExports(),
    log,
    status: () => ({
      appVersion: options.appVersion,
      host: options.host,
      folder: catalogue.folder,
      readOnly: catalogue.readOnly,
    }),
    async startIntake({ jobId, trayId, refs, to }) {
      const { job } = await jobs.get(jobId)
      if (!job.trays.some(tray => tray.id === trayId))
        throw new FaultError('NOT_FOUND', {
          what: 'There is no such tray.',
          where: `tray ${trayId}`,
          hint: 'Open the job again.',
        })
      const waiting = files.take(refs)
      return tasks.start(async ({ signal, onProgress }) => {
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
      })
    },
    startCheck: mend =>
      tasks.start(async ({ signal, onProgress }) => ({
        kind: 'check',
        report: await catalogue.check({ mend, signal, onProgress }),
      })),
    startDemo: () =>
      tasks.start(async ({ signal, onProgress }) => ({
        kind: 'demo',
        jobIds: await loadDemo({ folder: options.demoFolder, catalogue, signal, onProgress }),
      })),
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    tell,
    async close() {
      forget()
      await tasks.close()
      await files.close()
      await catalogue.photos.close()
      await catalogue.close()
    },
  }
}

/** A fault nobody expected: told by an id under which the log has it. */
export function unknownFault(error: unknown, log: Log): FaultError {
  const id = randomUUID().slice(0, 8)
  log.error(id, error)
  return new FaultError('INTERNAL', {
    what: 'Something went wrong that should not.',
    where: `log entry ${id}`,
    hint: 'What was saved is safe. Try again; if it stays, report it with the log entry.',
  })
}

// Everything the app can do, on one open catalogue: put together here, served by both hosts and the command line.
import { randomUUID } from 'node:crypto'
import type { CatalogueStatus, Change } from '../../shared/contract/contract.ts'
import type { Settings } from '../../shared/contract/settings-schema.ts'
import type { Audience } from '../../shared/writeup/write-up.ts'
import { type Changes, createChanges } from './changes.ts'
import { loadDemo } from './demo/load-demo.ts'
import { createExports, type Exports } from './exports.ts'
import { FaultError } from './fault.ts'
import { type IntakeRequest, intakeWork } from './intake-task.ts'
import { createJobSessions, type JobSessions } from './job-sessions.ts'
import type { Log } from './log.ts'
import { createOwnLayouts, type OwnLayouts } from './own-layouts.ts'
import { createRecordings, type Recordings } from './recordings/recordings.ts'
import type { Catalogue } from './store/catalogue.ts'
import { type Disk, realDisk } from './store/disk.ts'
import { createTasks, type Tasks } from './tasks.ts'
import { createWaitingFiles, type WaitingFiles } from './waiting-files.ts'
import { writeUpPdf } from './write-up/write-up-pdf.ts'

export type Services = {
  catalogue: Catalogue
  jobs: JobSessions
  layouts: OwnLayouts
  tasks: Tasks
  files: WaitingFiles
  recordings: Recordings
  exports: Exports
  changes: Changes
  log: Log
  status: () => CatalogueStatus
  setSettings: (settings: Settings) => Promise<Settings>
  /** These three give a task id. */
  startIntake: (request: IntakeRequest) => Promise<string>
  startCheck: (mend: boolean) => string
  startDemo: (options?: { oneByOne: boolean }) => string
  writeUpPdf: (
    jobId: string,
    audience: Audience,
  ) => Promise<{ exportId: string; fileName: string; bytes: number }>
  close: () => Promise<void>
}

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
  const files = createWaitingFiles(catalogue, options.disk ?? realDisk)
  const exports = createExports()
  const changes = createChanges()
  const tell = (change: Change) => changes.tell(change)
  const forget = catalogue.onChange(tell)

  return {
    catalogue,
    jobs,
    layouts: createOwnLayouts(catalogue.layouts, () => tell({ kind: 'layouts' })),
    tasks,
    files,
    recordings: createRecordings({ jobs, files, store: catalogue.recordings }),
    exports,
    changes,
    log,
    status: () => ({
      appVersion: options.appVersion,
      host: options.host,
      folder: catalogue.folder,
      readOnly: catalogue.readOnly,
    }),
    async setSettings(settings) {
      const saved = await catalogue.settings.set(settings)
      tell({ kind: 'settings' })
      return saved
    },
    startIntake: async request => tasks.start(await intakeWork({ catalogue, jobs, files }, request)),
    startCheck: mend =>
      tasks.start(async ({ signal, onProgress }) => ({
        kind: 'check',
        report: await catalogue.check({ mend, signal, onProgress }),
      })),
    startDemo: ({ oneByOne } = { oneByOne: false }) =>
      tasks.start(async ({ signal, onProgress }) => ({
        kind: 'demo',
        jobIds: await loadDemo({ folder: options.demoFolder, catalogue, signal, onProgress, oneByOne }),
      })),
    async writeUpPdf(jobId, audience) {
      const { job } = await jobs.get(jobId)
      const { bytes, fileName } = await writeUpPdf(job, audience, catalogue.settings.get(), catalogue.photos)
      const exportId = exports.add({ bytes, fileName, type: 'application/pdf' })
      return { exportId, fileName, bytes: bytes.length }
    },
    async close() {
      forget()
      changes.close()
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

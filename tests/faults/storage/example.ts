// The small invented jobs that the storage tests save, lose, damage and look for again.
import { fourInLine, shotNamed } from '../../../shared/job/testing/example-job.ts'
import { newJob } from '../../../shared/job/new-job.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import {
  type Catalogue,
  openCatalogue,
  type OpenOptions,
} from '../../../electron/services/store/catalogue.ts'
import { FaultError } from '../../../electron/services/fault.ts'

export const appVersion = '0.0.0'

export const jobCalled = (id: string, complaint = `${id} runs rough`, month = 3): Job =>
  newJob({
    id,
    trayId: 't1',
    now: `2026-0${month}-02T09:14:00Z`,
    complaint,
    engine: { vehicle: 'Invented orchard truck' },
    layout: fourInLine,
  })

/** The job with one photo on its first slot. */
export function withPhoto(job: Job, photo: string, bytes: number): Job {
  const [tray] = job.trays
  const [slot, ...slots] = tray?.slots ?? []
  if (!tray || !slot) throw new Error('a new job has a tray with slots')
  const shot = shotNamed(`s${slot.shots.length + 1}`, { photo, bytes })
  return { ...job, trays: [{ ...tray, slots: [{ ...slot, shots: [...slot.shots, shot] }, ...slots] }] }
}

export const open = (folder: string, options: Partial<OpenOptions> = {}): Promise<Catalogue> =>
  openCatalogue(folder, { appVersion, ...options })

export const saveAgain = async (catalogue: Catalogue, id: string, complaint: string): Promise<Job> =>
  catalogue.save({ ...(await catalogue.load(id)), complaint })

/** The code of the fault; throws anything that is not one. */
export async function faultOf(work: () => Promise<unknown>): Promise<FaultError | null> {
  try {
    await work()
    return null
  } catch (error) {
    if (error instanceof FaultError) return error
    throw error
  }
}

export const isLong = process.env['PLUGTRAY_FAULTS'] === 'long'

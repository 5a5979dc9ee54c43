// Two thousand invented jobs for the catalogue bench: eight plugs each, read and photographed, with two rounds of pulls.
import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { layoutById } from '../../shared/engine/layouts.ts'
import type { Job } from '../../shared/job/job-schema.ts'
import { newJob } from '../../shared/job/new-job.ts'
import { compressionPull, shotNamed } from '../../shared/job/testing/example-job.ts'
import { conditions } from '../../shared/plug/condition.ts'
import { jobBytes, stampJob } from '../../electron/services/store/job-file.ts'

const vehicles = [
  'Orchard truck',
  'Harbour launch',
  'Library bus',
  'Delivery van',
  'Standby generator',
  'Jäger tractor',
]
const complaints = [
  'Misfires under load when warm',
  'Burns oil and smokes on start-up',
  'Shakes at idle, smooth above 2,000 rpm',
  'Hard to start when cold',
  'In for a tune-up, oil seen in a plug well',
]
const people = ['Ana', 'Ben', 'Zoë', 'Émile', 'Søren']

const pick = <T>(from: readonly T[], at: number): T => {
  const found = from[at % from.length]
  if (found === undefined) throw new Error('nothing to pick from')
  return found
}

/** The same job for the same number. Numbers spread over three years, ids sort by number. */
export function jobNumber(number: number): Job {
  const layout = layoutById('v8-cross-oddeven') ?? layoutById('v8')
  if (!layout) throw new Error('a V8 is among the layouts')
  const now = new Date(Date.UTC(2023, 6, 1, 8) + number * 13 * 3_600_000).toISOString()
  const id = `job-${String(number).padStart(5, '0')}`
  const job = newJob({
    id,
    trayId: 'tray-1',
    now,
    complaint: `${pick(complaints, number)} (visit ${number})`,
    engine: { vehicle: `${pick(vehicles, number * 7)} ${number % 97}` },
    layout,
    technician: pick(people, number * 3),
  })
  const trays = job.trays.map(tray => ({
    ...tray,
    slots: tray.slots.map((slot, at) => ({
      ...slot,
      shots: [
        shotNamed(`s${at}`, {
          photo: (number * 8 + at).toString(16).padStart(64, '0'),
          takenAt: { local: `${now.slice(0, 10)}T09:00:0${at}` },
        }),
      ],
      reading: {
        by: { kind: 'person' as const, name: 'Ana' },
        at: now,
        condition: pick(conditions, number + at * 3),
        details: { wetness: 'dry' as const },
      },
    })),
  }))
  const pulls = Array.from({ length: 16 }, (_, at) =>
    compressionPull(`p${at}`, (at % 8) + 1, 120 + ((number + at) % 40)),
  )
  return { ...job, trays, pulls }
}

export type ManyJobs = { count: number; bytes: number; plugs: number }

/** Writes the jobs as a catalogue without an index. Not flushed: they are only to be read. */
export async function writeJobs(folder: string, count: number): Promise<ManyJobs> {
  const written = { count, bytes: 0, plugs: 0 }
  for (let number = 0; number < count; number += 1) {
    const job = jobNumber(number)
    const place = join(folder, 'jobs', job.id)
    await mkdir(place, { recursive: true })
    const bytes = jobBytes(stampJob(job, 1))
    await writeFile(join(place, 'job.json'), bytes)
    written.bytes += bytes.length
    written.plugs += job.trays.reduce((sum, { slots }) => sum + slots.length, 0)
  }
  return written
}

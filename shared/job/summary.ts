// One line of the job list, made from the job and its condition map.
import type { JobSummary } from '../contract/summary-schema.ts'
import type { Job } from './job-schema.ts'

type State = JobSummary['states'][number]

const photosShown = 4
const urgency: Record<State['state'], number> = { fault: 0, watch: 1, unknown: 2, sound: 3 }

/** First photo of each plug, the worst cylinders first, then the unsorted ones: what tells jobs apart in a list. */
const tellingPhotos = (job: Job, states: readonly State[]): string[] => {
  const rank = new Map(states.map(({ cylinder, state }) => [cylinder, urgency[state]]))
  const laid = job.trays
    .flatMap(tray => tray.slots)
    .toSorted(
      (a, b) =>
        (rank.get(a.cylinder) ?? urgency.unknown) - (rank.get(b.cylinder) ?? urgency.unknown) ||
        a.cylinder - b.cylinder,
    )
    .flatMap(slot => slot.shots.slice(0, 1))
  const shots = [...laid, ...job.trays.flatMap(tray => tray.unsorted)]
  return [...new Set(shots.map(shot => shot.photo))].slice(0, photosShown)
}

/** `states` is the condition map in short, one entry a cylinder; further fields of its entries are left out. */
export const summarise = (job: Job, states: readonly State[]): JobSummary => ({
  id: job.id,
  rev: job.rev ?? 0,
  createdAt: job.createdAt,
  updatedAt: job.updatedAt,
  archived: job.archivedAt !== undefined,
  demo: job.demo === true,
  repaired: job.repair !== undefined,
  complaint: job.complaint,
  vehicle: job.engine.vehicle,
  vin: job.engine.vin ?? '',
  technician: job.technician ?? '',
  layoutName: job.layout.name,
  states: states
    .map(({ cylinder, state }) => ({ cylinder, state }))
    .toSorted((a, b) => a.cylinder - b.cylinder),
  photos: tellingPhotos(job, states),
})

// The ways to narrow the job list.
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'

type Filter = { label: string; keeps: (job: JobSummary) => boolean }

export const filters = {
  current: { label: 'All', keeps: job => !job.archived },
  open: { label: 'Open', keeps: job => !job.archived && !job.repaired },
  fault: {
    label: 'With a fault',
    keeps: job => !job.archived && job.states.some(one => one.state === 'fault'),
  },
  repaired: { label: 'Repaired', keeps: job => !job.archived && job.repaired },
  demo: { label: 'Demo', keeps: job => !job.archived && job.demo },
  archived: { label: 'Archived', keeps: job => job.archived },
} as const satisfies Record<string, Filter>

export type FilterName = keyof typeof filters

export const filterNames = [
  'current',
  'open',
  'fault',
  'repaired',
  'demo',
  'archived',
] as const satisfies readonly FilterName[]

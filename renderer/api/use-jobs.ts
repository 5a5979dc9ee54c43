// The job list and one open job, kept live: every change goes through the host and comes back as the new state.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { JobState, NewJob } from '../../shared/contract/contract.ts'
import type { Command } from '../../shared/job/command-schema.ts'
import { useHost } from './host-context.ts'

export const keys = {
  jobs: ['jobs'] as const,
  job: (id: string) => ['job', id] as const,
  settings: ['settings'] as const,
  status: ['status'] as const,
  layouts: ['layouts'] as const,
}

export function useJobs() {
  const { api } = useHost()
  return useQuery({ queryKey: keys.jobs, queryFn: () => api.jobs.list() })
}

export function useJobState(id: string) {
  const { api } = useHost()
  return useQuery({ queryKey: keys.job(id), queryFn: () => api.jobs.get({ id }), retry: false })
}

/** Marks the mutations that the "saving" line counts. */
export const savingKey = ['saving'] as const

type JobChange = { kind: 'apply'; command: Command } | { kind: 'undo' } | { kind: 'redo' }

/** Changes one job. Changes are sent one after another; the newest state wins on the page. */
export function useJobChange(id: string) {
  const { api } = useHost()
  const cache = useQueryClient()
  return useMutation({
    mutationKey: savingKey,
    scope: { id: `job ${id}` },
    mutationFn: (change: JobChange): Promise<JobState> => {
      if (change.kind === 'undo') return api.jobs.undo({ id })
      if (change.kind === 'redo') return api.jobs.redo({ id })
      return api.jobs.apply({ id, command: change.command })
    },
    onSuccess: state => cache.setQueryData(keys.job(id), state),
  })
}

export function useJobActions() {
  const { api } = useHost()
  const cache = useQueryClient()
  const refresh = () => cache.invalidateQueries({ queryKey: keys.jobs })
  return {
    create: useMutation({
      mutationKey: savingKey,
      mutationFn: (wanted: NewJob) => api.jobs.create(wanted),
      onSettled: refresh,
    }),
    duplicate: useMutation({
      mutationKey: savingKey,
      mutationFn: (id: string) => api.jobs.duplicate({ id }),
      onSettled: refresh,
    }),
    remove: useMutation({
      mutationKey: savingKey,
      mutationFn: (id: string) => api.jobs.remove({ id }),
      onSettled: refresh,
    }),
    restore: useMutation({
      mutationKey: savingKey,
      mutationFn: (id: string) => api.jobs.restore({ id }),
      onSettled: refresh,
    }),
    archive: useMutation({
      mutationKey: savingKey,
      mutationFn: ({ id, archived }: { id: string; archived: boolean }) =>
        api.jobs.apply({ id, command: { command: 'set archived', archived } }),
      onSettled: refresh,
    }),
  }
}

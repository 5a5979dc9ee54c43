// Listens to what changes on disk, from this window or another, and refreshes what is shown.
import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { JobState } from '../../shared/contract/contract.ts'
import { useHost } from './host-context.ts'
import { keys } from './use-jobs.ts'

const retryMs = 2000

/** False while the host does not answer. */
export function useChanges(): boolean {
  const { api } = useHost()
  const cache = useQueryClient()
  const [connected, setConnected] = useState(true)
  useEffect(() => {
    const stop = new AbortController()
    const listen = async () => {
      while (!stop.signal.aborted) {
        try {
          const changes = await api.catalogue.changes(undefined, { signal: stop.signal })
          setConnected(true)
          // What happened while nobody listened is caught up with.
          await cache.invalidateQueries({ queryKey: keys.jobs })
          for await (const change of changes) {
            if (change.kind === 'settings') void cache.invalidateQueries({ queryKey: keys.settings })
            else if (change.kind === 'layouts') void cache.invalidateQueries({ queryKey: keys.layouts })
            else {
              void cache.invalidateQueries({ queryKey: keys.jobs })
              if (change.kind === 'job') {
                const known = cache.getQueryData<JobState>(keys.job(change.id))
                if (known && (known.job.rev ?? 0) < change.rev)
                  void cache.invalidateQueries({ queryKey: keys.job(change.id) })
              }
            }
          }
        } catch {
          if (stop.signal.aborted) return
        }
        setConnected(false)
        await new Promise(resolve => setTimeout(resolve, retryMs))
      }
    }
    void listen()
    return () => stop.abort()
  }, [api, cache])
  return connected
}

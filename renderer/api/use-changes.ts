// Listens to what changes on disk, from this window or another, and refreshes what is shown.
import { ORPCError } from '@orpc/client'
import { type QueryClient, useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { Change, JobState } from '../../shared/contract/contract.ts'
import { useHost } from './host-context.ts'
import { keys } from './use-jobs.ts'

/** `lost`: the host does not answer. `stranger`: it was started anew and does not know this page's session. */
export type Connection = 'well' | 'lost' | 'stranger'

const retryMs = 2000
/** An import by another program is many changes: the list is read again at most this often. */
const listMs = 400

export function useChanges(): Connection {
  const { api } = useHost()
  const cache = useQueryClient()
  const [connection, setConnection] = useState<Connection>('well')
  useEffect(() => {
    const stop = new AbortController()
    const refresh = refresher(cache)
    const listen = async () => {
      for (let again = false; !stop.signal.aborted; again = true) {
        let next: Connection = 'lost'
        try {
          const changes = await api.catalogue.changes(undefined, { signal: stop.signal })
          setConnection('well')
          // What happened while nobody listened is caught up with.
          if (again) void cache.invalidateQueries()
          for await (const change of changes) refresh.after(change)
        } catch (error) {
          if (error instanceof ORPCError && error.status === 401) next = 'stranger'
        }
        if (stop.signal.aborted) return
        setConnection(next)
        await new Promise(resolve => setTimeout(resolve, retryMs))
      }
    }
    void listen()
    return () => {
      stop.abort()
      refresh.stop()
    }
  }, [api, cache])
  return connection
}

function refresher(cache: QueryClient) {
  let timer: number | undefined
  const stale = (queryKey: readonly string[]) => void cache.invalidateQueries({ queryKey })
  const list = () => {
    timer ??= window.setTimeout(() => {
      timer = undefined
      stale(keys.jobs)
    }, listMs)
  }
  return {
    after(change: Change) {
      if (change.kind === 'settings') stale(keys.settings)
      else if (change.kind === 'layouts') stale(keys.layouts)
      else list()
      if (change.kind !== 'job') return
      // This page's own changes are here already.
      const known = cache.getQueryData<JobState>(keys.job(change.id))
      if (known && (known.job.rev ?? 0) < change.rev) stale(keys.job(change.id))
    },
    stop: () => window.clearTimeout(timer),
  }
}

// Settings, the catalogue's status and the shop's own layouts.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { Settings, UnitChoice } from '../../shared/contract/settings-schema.ts'
import type { Layout } from '../../shared/engine/layout-schema.ts'
import { useHost } from './host-context.ts'
import { keys, savingKey } from './use-jobs.ts'

export function useSettings(): Settings | undefined {
  const { api } = useHost()
  return useQuery({ queryKey: keys.settings, queryFn: () => api.settings.get() }).data
}

const common: UnitChoice = {
  pressure: 'psi',
  vacuum: 'inHg',
  length: 'mm',
  temperature: '°C',
  altitude: 'ft',
  distance: 'km',
}

/** The units to show; common ones until the settings are there. */
export const useUnits = (): UnitChoice => useSettings()?.units ?? common

export function useSetSettings() {
  const { api } = useHost()
  const cache = useQueryClient()
  return useMutation({
    mutationKey: savingKey,
    mutationFn: (settings: Settings) => api.settings.set(settings),
    onMutate: settings => cache.setQueryData(keys.settings, settings),
    onError: () => cache.invalidateQueries({ queryKey: keys.settings }),
  })
}

export function useStatus() {
  const { api } = useHost()
  return useQuery({ queryKey: keys.status, queryFn: () => api.catalogue.status() }).data
}

export function useOwnLayouts(): Layout[] {
  const { api } = useHost()
  return useQuery({ queryKey: keys.layouts, queryFn: () => api.layouts.own() }).data ?? []
}

export function useLayoutActions() {
  const { api } = useHost()
  const cache = useQueryClient()
  const keep = (layouts: Layout[]) => cache.setQueryData(keys.layouts, layouts)
  return {
    save: useMutation({
      mutationKey: savingKey,
      mutationFn: (layout: Layout) => api.layouts.save(layout),
      onSuccess: keep,
    }),
    remove: useMutation({
      mutationKey: savingKey,
      mutationFn: (id: string) => api.layouts.remove({ id }),
      onSuccess: keep,
    }),
  }
}

// Hands the connection to every part of the page.
import { createContext, useContext } from 'react'
import type { Host } from './client.ts'

export const HostContext = createContext<Host | null>(null)

export function useHost(): Host {
  const host = useContext(HostContext)
  if (!host) throw new Error('useHost outside the app')
  return host
}

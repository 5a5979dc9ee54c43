// What every part of the job page shares: the job, the stage and tray looked at, the selection, and how to change things.
import { createContext, useContext } from 'react'
import type { Command, SlotAddress } from '../../../shared/job/command-schema.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import type { Tray } from '../../../shared/job/tray-schema.ts'
import type { CylinderState } from '../../../shared/diagnosis/condition-map.ts'

export type SelectHow = 'only' | 'toggle' | 'range'

export type JobPage = {
  job: Job
  tray: Tray
  setTray: (trayId: string) => void
  /** Condition map of the tray's stage. */
  states: readonly CylinderState[]
  /** Selected plugs; the last one is the one shown large. */
  selected: readonly SlotAddress[]
  select: (slot: SlotAddress, how: SelectHow) => void
  /** The order in which slots are shown and stepped through. */
  order: readonly SlotAddress[]
  orderName: 'cylinder' | 'firing'
  setOrderName: (name: 'cylinder' | 'firing') => void
  /** Sends a command; a refusal is shown to the person. Resolves to whether it was carried out. */
  apply: (command: Command) => Promise<boolean>
  readOnly: boolean
}

export const JobPageContext = createContext<JobPage | null>(null)

export function useJobPage(): JobPage {
  const page = useContext(JobPageContext)
  if (!page) throw new Error('useJobPage outside a job')
  return page
}

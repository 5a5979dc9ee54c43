// How a job was looked at when it was left: coming back to it, in this window, finds it so.
import type { SlotAddress } from '../../../shared/job/command-schema.ts'

export type JobView = {
  trayId: string
  selected: readonly SlotAddress[]
  orderName: 'cylinder' | 'firing'
}

const views = new Map<string, JobView>()
const mostKept = 50

export const rememberedView = (jobId: string): JobView | undefined => views.get(jobId)

export function rememberView(jobId: string, view: JobView): void {
  views.delete(jobId)
  views.set(jobId, view)
  const [oldest] = views.keys()
  if (views.size > mostKept && oldest !== undefined) views.delete(oldest)
}

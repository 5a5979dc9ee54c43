// What a work area holds, in a word beside its tab: how many plugs are read, how many pulls count.
import type { Job } from '../../../shared/job/job-schema.ts'
import { useJobPage } from './job-context.ts'

export function TabNote({ job, tab }: { job: Job; tab: 'plugs' | 'gauges' | 'causes' | 'write-up' }) {
  const { tray, states } = useJobPage()
  const faults = states.filter(one => one.state === 'fault').length
  const pulls = job.pulls.filter(pull => pull.stage === tray.stage && pull.voided === undefined).length
  const note = {
    plugs: `${tray.slots.filter(slot => slot.reading).length}/${tray.slots.length} read`,
    gauges: pulls === 0 ? 'none yet' : `${pulls} ${pulls === 1 ? 'pull' : 'pulls'}`,
    causes: faults === 0 ? '' : `${faults} ${faults === 1 ? 'fault' : 'faults'}`,
    'write-up': job.repair ? 'repaired' : '',
  }[tab]
  return note === '' ? null : <small>{note}</small>
}

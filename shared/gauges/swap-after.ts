// After the repair nobody swaps again: what had followed the part is held against the counts and cut-outs taken then.
import type { Job } from '../job/job-schema.ts'
import { judgeBalance } from './balance.ts'
import { judgeMisfireCounts } from './misfire-counts.ts'
import type { CylinderVerdict } from './verdict.ts'

/** The same proven part in its cylinder, as it stands after the work; none where that cylinder was not tested again. */
export function afterWork(proven: CylinderVerdict, job: Job): CylinderVerdict[] {
  const again = [...judgeMisfireCounts(job, 'after repair'), ...judgeBalance(job, 'after repair')].filter(
    one => one.cylinder === proven.cylinder && one.about !== 'reading',
  )
  if (again.length === 0) return []
  const still = again.find(one => one.verdict === 'outside' || one.verdict === 'watch')
  const open = again.every(one => one.verdict === 'cannot be called')
  const shown = again
    .map(one => `${one.test}, ${one.rule} ${one.value} ${one.unit}: ${one.verdict}`)
    .join('; ')
  return [
    {
      ...proven,
      stage: 'after repair',
      value: 0,
      verdict: still ? 'outside' : open ? 'cannot be called' : 'within',
      limit: 'the cylinder works after the part was renewed',
      why: `${still ? 'Not in order after the work' : open ? 'Tested again without an answer' : 'In order after the work'}: ${shown}.`,
    },
  ]
}

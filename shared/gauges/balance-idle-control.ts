// Idle control fights the test: it brings the speed back while a cylinder is cut, so the loss looks smaller than it is.
import { conditionsOf } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { CylinderVerdict } from './verdict.ts'

export type IdleControl = 'fixed' | 'active' | 'unknown'

export const idleControlOf = (job: Job, stage: Stage): IdleControl =>
  conditionsOf(job, 'balance', stage).idleControl ?? 'unknown'

/**
 * How much of a share of speed the control may hide or lend, in percent points beside the reading's own error. No
 * published figure found: ours.
 */
export const recoveryDoubt = { fixed: 0, unknown: 10, active: 20 } as const satisfies Record<
  IdleControl,
  number
>

/**
 * A small loss of speed with the control at work: one cut alone, with no vacuum beside it, settles nothing, for the speed
 * may have been back before it was read.
 */
export function doubtedSpeed(
  one: CylinderVerdict,
  control: IdleControl,
  { cuts, vacuumAgrees }: { cuts: number; vacuumAgrees: boolean },
): CylinderVerdict {
  if (control === 'fixed' || (one.verdict !== 'outside' && one.verdict !== 'watch')) return one
  if (control === 'unknown')
    return {
      ...one,
      why: `${one.why} Nobody noted whether idle control was at work; if it was, the drop looks too small.`,
    }
  const alone = cuts < 2 && !vacuumAgrees
  return {
    ...one,
    ...(alone ? { verdict: 'cannot be called' as const } : {}),
    why: alone
      ? `${one.why} But idle control was at work and may have brought the speed back before it was read: fix idle air or raise the idle, repeat the cut, or read vacuum beside it.`
      : `${one.why} Idle control was at work, which makes drops look small; ${vacuumAgrees ? 'the vacuum says the same' : `${cuts} cut-outs were made`}.`,
  }
}

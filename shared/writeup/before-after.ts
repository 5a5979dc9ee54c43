// What stood out as found, beside the same test after the repair.
import { conditionMap } from '../diagnosis/condition-map.ts'
import type { Evidence } from '../diagnosis/evidence.ts'
import { valueWords } from '../diagnosis/gauge-evidence.ts'
import { plugReadings } from '../diagnosis/plug-evidence.ts'
import { sameSlot, slotLabel } from '../engine/slots.ts'
import { judgeAll } from '../gauges/gauges.ts'
import type { ShownUnits } from '../gauges/shown.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import type { Job } from '../job/job-schema.ts'
import { differenceWords } from './difference.ts'

/** "met" once it is in order, "not met" when it still is not, "open" when it was not looked at again or cannot tell. */
export type Standing = 'met' | 'not met' | 'open'

export type BeforeAfter = {
  what: string
  where: string
  before: string
  after: string
  /** How far a measured value moved, with its interval. */
  difference?: string
  standing: Standing
}

/** Every gauge verdict outside its limit and every finding on a plug or well, as found. Empty without any. */
export function beforeAfter(job: Job, units: ShownUnits): BeforeAfter[] {
  return [...gaugeRows(job, units), ...plugRows(job)]
}

const key = (one: GaugeVerdict): string => `${one.test} ${one.rule} ${one.cylinder ?? ''}`
const fails = (one: GaugeVerdict): boolean =>
  one.about !== 'reading' && (one.verdict === 'outside' || one.verdict === 'watch')

function gaugeRows(job: Job, units: ShownUnits): BeforeAfter[] {
  const after = new Map(judgeAll(job, 'after repair', units).map(one => [key(one), one]))
  return judgeAll(job, 'as found', units)
    .filter(fails)
    .map(before => {
      const now = after.get(key(before)) ?? needleGone(before, after)
      const difference = now && differenceWords(before, now)
      return {
        what: `${before.test}, ${before.rule}`,
        where: before.cylinder === undefined ? 'engine' : `cylinder ${before.cylinder}`,
        before: valueWords(before),
        after: now ? `${valueWords(now)}: ${now.verdict}` : 'not repeated',
        ...(difference === undefined ? {} : { difference }),
        standing: now ? standingOf(now) : 'open',
      }
    })
}

/** A needle that moved has no verdict any more once it is steady: the reading in that state stands for it. */
function needleGone(
  before: GaugeVerdict,
  after: ReadonlyMap<string, GaugeVerdict>,
): GaugeVerdict | undefined {
  const phase = /^needle at ([^:]+):/.exec(before.rule)?.[1]
  return phase === undefined ? undefined : after.get(`${before.test} ${phase} `)
}

const standingOf = ({ verdict }: GaugeVerdict): Standing =>
  verdict === 'within' || verdict === 'noted' ? 'met' : verdict === 'cannot be called' ? 'open' : 'not met'

function plugRows(job: Job): BeforeAfter[] {
  const readings = plugReadings(job, 'after repair')
  const map = conditionMap(job, 'as found')
  return map.flatMap(({ evidence }) =>
    evidence
      .filter(one => one.from === 'plug' && one.state !== 'sound')
      .flatMap(one => {
        const { slot } = one
        if (!slot) return []
        const now = readings.find(other => sameSlot(other.slot, slot))?.reading
        const row = {
          what: one.of === 'well' ? 'plug well' : 'plug',
          where: slotLabel(slot),
          before: one.headline,
        }
        if (!now) return [{ ...row, after: 'not looked at again', standing: 'open' as const }]
        return [{ ...row, ...plugAfter(one, now.condition, now.details.oilInWell) }]
      }),
  )
}

/** A new plug's colour means little before it has run, so a good-looking plug leaves the matter open. */
function plugAfter(
  before: Evidence,
  condition: string | undefined,
  oilInWell: boolean | undefined,
): Pick<BeforeAfter, 'after' | 'standing'> {
  if (before.of === 'well') {
    if (oilInWell === undefined) return { after: 'well not noted', standing: 'open' }
    return oilInWell
      ? { after: 'oil in the well', standing: 'not met' }
      : { after: 'well dry', standing: 'met' }
  }
  const reads = `reads ${condition ?? 'no condition'}`
  if (condition === 'normal')
    return before.of === 'plug'
      ? { after: reads, standing: 'met' }
      : { after: `${reads}; colour counts once it has run`, standing: 'open' }
  return { after: reads, standing: condition === undefined ? 'open' : 'not met' }
}

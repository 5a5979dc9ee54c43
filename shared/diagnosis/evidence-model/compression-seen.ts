// What the compression pulls say: each cylinder against the better half, first puffs, oil, and the level of the best.
import { atmosphereOf, pressureRatio } from '../../gauges/atmosphere.ts'
import { compressionValues, isMeasured } from '../../gauges/compression-values.ts'
import { median } from '../../gauges/middle.ts'
import { validPulls } from '../../job/current.ts'
import type { Job } from '../../job/job-schema.ts'
import type { Stage } from '../../job/tray-schema.ts'
import { type Seen, spans, sure } from './seen.ts'

/** Spans of a cylinder's share of the better half; between the published 70 to 90 % rules. Spread of sound ones: judgement. */
const shareLimits = [0.35, 0.72, 0.87] as const
const soundSpread = 0.03
/** Psi at sea level of the best cylinder: judgement, under any usual engine. */
const bestLimits = [85, 115] as const

export function compressionSeen(job: Job, stage: Stage): Seen[] {
  const values = compressionValues(job, stage).filter(isMeasured)
  const [first] = values
  if (!first) return []
  const rising = values.map(one => one.dry).toSorted((a, b) => a - b)
  // The worst of the better half: one cylinder that reads high, with oil in it, does not make the others low.
  const reference = rising[Math.min(rising.length - 1, Math.ceil(rising.length / 2))] ?? 0
  if (!(reference > 0)) return []
  const from = 'compression' as const
  const best = (rising.at(-1) ?? 0) / pressureRatio(atmosphereOf(job.circumstances))
  const seen: Seen[] = [
    { finding: 'compression of the best', from, weights: spans(best, 8, bestLimits).toReversed() },
    ...(validPulls(job, 'compression', stage).some(pull => pull.entry.held === false)
      ? [{ finding: 'gauge fell back', from, weights: sure(1, 2) }]
      : []),
  ]
  const shareOf = (psi: number): number => psi / reference
  const sound = values.filter(one => shareOf(one.dry) > 0.87)
  const rises = sound.flatMap(one => (one.wet === undefined ? [] : [one.wet / one.dry - 1]))
  const puffs = sound.flatMap(({ firstPuff, finalOfPuffed }) =>
    firstPuff !== undefined && finalOfPuffed ? [firstPuff / finalOfPuffed] : [],
  )
  for (const one of values) {
    const { cylinder, dry, wet, firstPuff, finalOfPuffed, between } = one
    // A single cylinder has nothing to be compared with.
    if (values.length > 1) {
      const deviation = Math.hypot(between / Math.sqrt(3) / reference, soundSpread)
      seen.push({
        finding: 'compression level',
        cylinder,
        from,
        weights: spans(shareOf(dry), deviation, shareLimits).toReversed(),
      })
    }
    if (shareOf(dry) > 0.9) continue
    if (wet !== undefined && dry > 0) {
      const rise = wet / dry - 1
      // With nothing to compare, a rise has to be much more than the oil's own volume makes.
      const own = rises.length > 0 ? median(rises) : 0.15
      const deviation = Math.hypot((2 * between) / dry / Math.sqrt(3), rises.length > 0 ? 0.04 : 0.12)
      seen.push({ finding: 'rise with oil', cylinder, from, weights: spans(rise - own, deviation, [0.1]) })
    }
    if (firstPuff !== undefined && finalOfPuffed) {
      const ratio = firstPuff / finalOfPuffed / (puffs.length > 0 ? median(puffs) / 0.78 : 1)
      seen.push({
        finding: 'first puff',
        cylinder,
        from,
        weights: spans(ratio, puffs.length > 0 ? 0.05 : 0.1, [0.66]).toReversed(),
      })
    }
  }
  return seen
}

// What is said beside relative compression: which one is low, what spoiled the recording, what to do about it.
import type { Layout } from '../engine/layout-schema.ts'
import type { CrankingPart } from './cranking-part.ts'
import type { CycleHeights } from './hump-heights.ts'
import { usualShape } from './hump-shape.ts'
import { lowestOne } from './lowest.ts'
import type { PositionValue, Remark } from './recording.ts'
import type { SyncReading } from './sync-pulses.ts'
import { syncRemarks } from './sync-remarks.ts'
import type { ThinSeries } from './thin-series.ts'
import type { HumpTrack } from './track-humps.ts'

export type CompressionFacts = {
  layout: Layout
  part: CrankingPart
  track: HumpTrack
  clip: number
  current: ThinSeries
  cycles: CycleHeights[]
  kept: CycleHeights[]
  /** Null where there is no sync channel. */
  reading: SyncReading | null
  values: PositionValue[]
  rpms: { mean: number; slowest: number; fastest: number }
  /** Length of the repeating pattern where it speaks against the layout. */
  pattern: number | null
}

const fewCycles = 5
/** Half a bell's width at half height on either side: closer humps run into each other. */
const overlapDeg = 2.355 * usualShape.widthDeg * 1.3

export function compressionRemarks(facts: CompressionFacts): Remark[] {
  return [
    ...layoutRemarks(facts),
    ...syncRemarks(facts.layout, facts.reading),
    ...lowestRemarks(facts),
    ...recordingRemarks(facts),
    ...cycleRemarks(facts),
  ]
}

function layoutRemarks({ layout, reading, pattern, rpms }: CompressionFacts): Remark[] {
  const count = layout.firingOrder.length
  const check = 'Check the layout chosen for this engine; the values below are only right if it is.'
  if (reading?.kind === 'other' || reading?.kind === 'cycle') return []
  if (pattern !== null) {
    return [
      {
        code: 'count differs',
        text: `The pattern of high and low humps comes back every ${pattern} humps, which does not fit the layout with ${count} cylinders. ${check}`,
      },
    ]
  }
  if (rpms.mean > 400 || rpms.mean < 90) {
    return [
      {
        code: 'speed unlikely',
        text: `With ${count} cylinders the humps mean a cranking speed of ${Math.round(rpms.mean)} rpm, which is unlikely. ${check}`,
      },
    ]
  }
  return []
}

function lowestRemarks({ values }: CompressionFacts): Remark[] {
  const lowest = lowestOne(values)
  if (!lowest) return []
  const percent = `${Math.round(lowest.percent)} % of the highest`
  if (lowest.cylinder !== null) {
    return [{ code: 'lowest', text: `Cylinder ${lowest.cylinder} is lowest, at ${percent}.` }]
  }
  const where =
    lowest.position === 1
      ? 'the first hump marked and every cycle after it'
      : `position ${lowest.position}, counted in firing order from the first hump marked`
  return [
    {
      code: 'lowest',
      text: `One cylinder is lowest, at ${percent}: ${where}. Record again with a sync signal from cylinder 1 to name it.`,
    },
  ]
}

function recordingRemarks({ part, clip, current, track }: CompressionFacts): Remark[] {
  const remarks: Remark[] = []
  if (Number.isFinite(clip)) {
    remarks.push({
      code: 'clipped',
      text: `The current is cut off at ${Math.round(clip)} A: the clamp or the channel ran out of range. The cut samples are left out, which widens the intervals. Choose a larger range and record again.`,
    })
  }
  if (current.missing + current.backwards > 0.001 * current.samples) {
    remarks.push({
      code: 'missing samples',
      text: `${current.missing + current.backwards} of ${current.samples} samples have no number or step back in time; they are left out.`,
    })
  }
  if (track.hum !== null) {
    remarks.push({
      code: 'mains hum',
      text: `Mains hum of ${track.hum} Hz was taken out of the recording. Keep the leads away from mains cables and chargers.`,
    })
  }
  if (part.bursts > 1) {
    remarks.push({
      code: 'several starts',
      text: `The starter was switched on ${part.bursts} times; only the longest cranking is evaluated.`,
    })
  }
  if (track.explained < 0.6) {
    remarks.push({
      code: 'noisy',
      text: 'Much of the current does not repeat from cycle to cycle: noise, a loose clamp, or uneven cranking. Record again with the clamp still and a charged battery.',
    })
  }
  return remarks
}

function cycleRemarks({ layout, track, cycles, kept, rpms }: CompressionFacts): Remark[] {
  const remarks: Remark[] = []
  const count = layout.firingOrder.length
  const dropped = cycles.length - kept.length
  if (dropped > 0) {
    remarks.push({
      code: 'cycles left out',
      text: `${dropped} of ${cycles.length} cycles are left out: they are cut, clipped or unlike the others.`,
    })
  }
  if (kept.length < fewCycles) {
    remarks.push({
      code: 'few cycles',
      text: `Only ${kept.length} whole ${kept.length === 1 ? 'cycle' : 'cycles'} could be used. Crank for five seconds or more for a firm result.`,
    })
  }
  if (rpms.fastest > 1.25 * rpms.slowest && kept.length > 2) {
    remarks.push({
      code: 'speed changed',
      text: `Cranking speed changed from ${Math.round(rpms.slowest)} to ${Math.round(rpms.fastest)} rpm. Charge the battery, or crank with a steady support.`,
    })
  }
  if (track.otherKind) {
    remarks.push({
      code: 'humps reach on',
      text: 'The current after a hump does not come back as it went up: a leaking or uneven cylinder reaches into the humps beside it. The intervals are widened for it; which cylinder is lowest is firmer than the percentages of its neighbours.',
    })
  }
  if (720 / count < overlapDeg) {
    remarks.push({
      code: 'humps overlap',
      text: `With ${count} cylinders the humps run into each other. They are taken apart by the shape a compression has, so the order of the cylinders is firmer than the percentages.`,
    })
  }
  return remarks
}

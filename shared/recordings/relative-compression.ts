// Relative compression from the starter current: every compression stroke takes current, a leaking one takes less.
// Common practice: the strongest cylinder is 100 %. No plug comes out for it.
import type { Layout } from '../engine/layout-schema.ts'
import { averagedHeights } from './averaged-heights.ts'
import { clipLevel } from './clipping.ts'
import { type CompressionFacts, compressionRemarks } from './compression-remarks.ts'
import { crankingPart } from './cranking-part.ts'
import { fitWider } from './cycle-fit.ts'
import { evenSeries } from './even-series.ts'
import { humpEvents, type HumpPlaces } from './hump-events.ts'
import { type CycleHeights, cycleHeights } from './hump-heights.ts'
import { otherPattern, plainHeights } from './hump-pattern.ts'
import { between } from './phase.ts'
import { nothingFound, type PositionValue, type RecordingResult } from './recording.ts'
import { pulseTimes, readSync, type SyncReading } from './sync-pulses.ts'
import type { ThinSeries } from './thin-series.ts'
import { type HumpTrack, trackHumps } from './track-humps.ts'

export const relativeCompressionMethod = 'starter current, hump fit 1'

const slowestRpm = 70
/** Below this share of the variance the humps found are no better than noise. */
const leastExplained = 0.45
/** Humps with more than their tips cut off cannot be measured. */
const leastTrusted = 0.72
/** Shapes that fit within this cost of the best count towards the interval. */
const costReach = 12

/** A real hump is no exact bell: the fitted width is trusted to this many degrees. */
const shapeDoubtDeg = 3

export type StarterSeries = { current: ThinSeries; sync?: ThinSeries }

const ofHighest = (shares: number[]): number[] => {
  const highest = Math.max(...shares)
  return shares.map(share => (100 * share) / highest)
}

/** How far the shares move between shapes that fit nearly as well: what the shape leaves open. */
function openByShape(track: HumpTrack): number[] {
  const best = track.fits[0]
  if (!best) return []
  const near = track.fits.filter(fit => fit.cost < best.cost + costReach)
  const own = ofHighest([...best.amplitudes])
  const weights = near.map(fit => Math.exp(-(fit.cost - best.cost) / 2))
  const total = weights.reduce((sum, one) => sum + one, 0)
  const shares = near.map(fit => ofHighest([...fit.amplitudes]))
  const beside = [-shapeDoubtDeg, shapeDoubtDeg].flatMap(degrees => {
    const fit = fitWider(track.cycle, best, degrees)
    return fit ? [ofHighest([...fit.amplitudes])] : []
  })
  const other = track.otherKind && ofHighest([...track.otherKind.amplitudes])
  return own.map((value, at) => {
    const square = shares.reduce(
      (sum, one, fit) => sum + (weights[fit] ?? 0) * ((one[at] ?? 0) - value) ** 2,
      0,
    )
    const doubt = beside.map(one => Math.abs((one[at] ?? 0) - value))
    const kind = other ? Math.abs((other[at] ?? 0) - value) / 2 : 0
    return Math.hypot(2 * Math.sqrt(square / total), Math.max(0, ...doubt), kind)
  })
}

/** Phase of each pulse on the track, for pulses within it. */
function pulsePhases(track: HumpTrack, sync: ThinSeries | undefined): number[] | null {
  if (!sync) return null
  const { series, phase } = track
  const times = series.level.map((_, index) => series.start + index * series.step)
  const end = times.at(-1) ?? 0
  return pulseTimes(sync)
    .filter(time => time >= series.start && time <= end)
    .map(time => between(times, phase, time))
}

/** Which cylinder each hump of the cycle is; all null without a sync that names cylinder 1. */
function cylindersBySync(reading: SyncReading, layout: Layout): (number | null)[] {
  const { firingOrder } = layout
  const humps = firingOrder.length
  if (reading.kind !== 'cycle') return firingOrder.map(() => null)
  const one = firingOrder.indexOf(1)
  return firingOrder.map((_, hump) => firingOrder[(one + hump - reading.hump + 2 * humps) % humps] ?? null)
}

/** The same recording with the clamp the other way round. */
const turnedRound = ({ level, high, low, ...rest }: ThinSeries): ThinSeries => ({
  ...rest,
  level: level.map(one => -one),
  high: low.map(one => -one),
  low: high.map(one => -one),
})

/**
 * Relative compression of each cylinder from a recording of the starter current. Without a sync signal the humps are
 * known by position only. A recording that cannot be evaluated gives no values and says why.
 */
export function relativeCompression(series: StarterSeries, layout: Layout): RecordingResult {
  const result = asRecorded(series, layout)
  if (result.values.length > 0) return result
  const turned = asRecorded({ ...series, current: turnedRound(series.current) }, layout)
  if (turned.values.length === 0) return result
  const text =
    'The current runs the other way: the clamp sits the wrong way round. It was read turned round, which changes nothing in the result.'
  return { ...turned, remarks: [...turned.remarks, { code: 'clamp reversed', text }] }
}

function asRecorded({ current, sync }: StarterSeries, layout: Layout): RecordingResult {
  const nothing = (code: string, text: string) => nothingFound(relativeCompressionMethod, code, text)
  const humps = layout.firingOrder.length
  const part = crankingPart(current, 120 / humps / slowestRpm)
  if (!part) {
    return nothing(
      'no cranking',
      'No stretch of steady starter current was found. Record from before the key is turned until after at least five seconds of cranking, with ignition and injection disabled, and check the direction and range of the clamp.',
    )
  }
  const clip = clipLevel(current, part.from, part.to)
  const series = evenSeries(current, part.from, part.to, clip)
  const trusted = series.trust.reduce((sum, one) => sum + one, 0) / series.trust.length
  if (Number.isFinite(clip) && trusted < leastTrusted) {
    return nothing(
      'clipped',
      `The current is cut off at ${Math.round(clip)} A for ${Math.round(100 * (1 - trusted))} % of the cranking: the clamp or the channel ran out of range. Choose a larger range and record again.`,
    )
  }
  const track = trackHumps(series, layout.intervalsDeg)
  if (!track || track.explained < leastExplained) {
    return nothing(
      'no humps',
      'The starter current shows no regular humps. Check that the clamp is around the starter or battery cable alone, zeroed, and in a range that fits; then record again.',
    )
  }
  const cycles = cycleHeights(track.series, track.phase, track.fit)
  const kept = cycles.filter(cycle => cycle.kept)
  if (kept.length === 0) {
    return nothing(
      'too short',
      `Not one whole cycle of ${humps} compressions could be read. Crank for at least five seconds with a steady clamp.`,
    )
  }
  const phases = pulsePhases(track, sync)
  const humpPhases = track.fit.angles.map(angle => (angle / 720) * humps)
  const reading = phases ? readSync(phases, humpPhases) : null
  const cylinders = cylindersBySync(reading ?? { kind: 'none' }, layout)
  const places: HumpPlaces = { humpPhases, cylinders, ...firstPlace(track, humpPhases) }
  const values = valuesOf(track, kept, places)
  const rpms = speeds(track, kept, humps)
  const facts: CompressionFacts = {
    layout,
    part,
    track,
    clip,
    current,
    cycles,
    kept,
    reading,
    values,
    rpms,
    pattern: otherPattern(plainHeights(track.series, track.phase), humps),
  }
  return {
    method: relativeCompressionMethod,
    values,
    events: humpEvents(track, cycles, places),
    synced: reading?.kind === 'cycle',
    cycles: kept.length,
    rpm: rpms.mean,
    remarks: compressionRemarks(facts),
  }
}

/** The hump that stands first in the recording is position 1. */
function firstPlace(track: HumpTrack, humpPhases: number[]): { firstHump: number } {
  const start = track.phase[0] ?? 0
  const humps = humpPhases.length
  const ahead = humpPhases.map(phase => (((phase - start) % humps) + humps) % humps)
  return { firstHump: ahead.indexOf(Math.min(...ahead)) }
}

function valuesOf(track: HumpTrack, kept: CycleHeights[], places: HumpPlaces): PositionValue[] {
  const { shares, plusMinus } = averagedHeights(
    kept.map(cycle => cycle.heights),
    ofHighest,
  )
  const open = openByShape(track)
  const humps = shares.length
  return shares
    .map((percent, hump) => ({
      position: ((hump - places.firstHump + humps) % humps) + 1,
      cylinder: places.cylinders[hump] ?? null,
      percent,
      ...(plusMinus ? { plusMinus: Math.hypot(plusMinus[hump] ?? 0, open[hump] ?? 0) } : {}),
    }))
    .toSorted((a, b) => a.position - b.position)
}

/** Crank speed over the kept cycles: mean, and of the slowest and the fastest cycle. */
function speeds(track: HumpTrack, kept: CycleHeights[], humps: number) {
  const { phase, series } = track
  const times = phase.map((_, index) => index * series.step)
  const each = kept.map(cycle => {
    const seconds = between(phase, times, cycle.from + humps) - between(phase, times, cycle.from)
    return 120 / seconds
  })
  return {
    mean: each.reduce((sum, one) => sum + one, 0) / each.length,
    slowest: Math.min(...each),
    fastest: Math.max(...each),
  }
}

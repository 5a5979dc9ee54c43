// Where the humps stand in the recording, for marking them on its picture.
import type { CycleHeights } from './hump-heights.ts'
import { between } from './phase.ts'
import type { FoundEvent } from './recording.ts'
import type { HumpTrack } from './track-humps.ts'

export type HumpPlaces = {
  /** Phase within the cycle of each hump, in humps. */
  humpPhases: number[]
  cylinders: (number | null)[]
  /** The hump that stands first in the recording. */
  firstHump: number
}

export function humpEvents(track: HumpTrack, cycles: CycleHeights[], places: HumpPlaces): FoundEvent[] {
  const { phase, series } = track
  const { humpPhases, cylinders, firstHump } = places
  const humps = humpPhases.length
  const times = phase.map((_, index) => series.start + index * series.step)
  const [begin, end] = [phase[0] ?? 0, phase.at(-1) ?? 0]
  const events: FoundEvent[] = []
  for (const [hump, place] of humpPhases.entries()) {
    for (let turn = Math.floor((begin - place) / humps); turn * humps + place <= end; turn += 1) {
      const at = turn * humps + place
      if (at < begin) continue
      const cycle = cycles.find(one => at >= one.from && at < one.from + humps)
      events.push({
        time: between(phase, times, at),
        position: ((hump - firstHump + humps) % humps) + 1,
        cylinder: cylinders[hump] ?? null,
        leftOut: !cycle?.kept,
      })
    }
  }
  return events.toSorted((a, b) => a.time - b.time)
}

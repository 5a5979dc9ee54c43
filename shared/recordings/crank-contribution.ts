// What each cylinder adds to the crank's speed in its own power stroke, from a recording at idle. Common practice.
import type { Layout } from '../engine/layout-schema.ts'
import { averagedHeights } from './averaged-heights.ts'
import { type CrankFacts, crankRemarks } from './crank-remarks.ts'
import { followSpeed, followTeeth } from './crank-following.ts'
import { between } from './phase.ts'
import { type FoundEvent, nothingFound, type RecordingResult } from './recording.ts'
import {
  levelAround,
  levelReach,
  meanCourse,
  type SpeedCourse,
  type StrokePlaces,
  strokePlaces,
  withoutDrift,
} from './speed-cycles.ts'
import { pulseTimes, readSync, type SyncReading } from './sync-pulses.ts'
import type { ThinSeries } from './thin-series.ts'
import { type ToothErrors, toothErrors } from './tooth-errors.ts'
import type { ToothEdges } from './tooth-turns.ts'

export const crankContributionMethod = 'crank speed, rise in the power stroke 1'

export type CrankSeries =
  | { kind: 'teeth'; edges: ToothEdges; sync?: ThinSeries }
  | { kind: 'rpm'; speed: ThinSeries; sync?: ThinSeries }

const nothing = (code: string, text: string) => nothingFound(crankContributionMethod, code, text)
const fewestCycles = 5

/** Share of the mean contribution of each cylinder, in percent. A recording that cannot be evaluated says why. */
export function crankContribution(series: CrankSeries, layout: Layout): RecordingResult {
  const strokes = layout.firingOrder.length
  const followed =
    series.kind === 'teeth' ? followTeeth(series.edges, strokes) : followSpeed(series.speed, strokes)
  if ('refused' in followed) return nothing(followed.refused.code, followed.refused.text)
  const { course, turns, teeth, spoiled } = followed
  const rough = withoutDrift(course, strokes)
  const errors = turns ? toothErrors(course, turns, teeth, rough, strokes) : null
  const flat = errors?.separated && turns ? corrected(rough, course, turns, teeth, errors) : rough
  const places = strokePlaces(meanCourse(flat, course.phase, strokes), layout.intervalsDeg)
  const cycles = risesOf(flat, course.phase, places, strokes)
  const kept = cycles.filter(cycle => cycle.rises.every(Number.isFinite))
  if (kept.length < fewestCycles) {
    return nothing(
      'too short',
      `Only ${kept.length} whole cycles of two turns could be read. Record at least ten seconds of steady idle.`,
    )
  }
  const { shares, plusMinus } = averagedHeights(
    kept.map(cycle => Float64Array.from(cycle.rises)),
    ofMean,
  )
  if (!(places.rise > 0) || shares.some(share => !Number.isFinite(share))) {
    return nothing(
      'no rise',
      'The crank speed shows no regular rise with the firing. Check the columns and the unit.',
    )
  }
  const rpm = course.rpm.reduce((sum, one) => sum + one, 0) / course.rpm.length
  const doubt = errors ? toothDoubt(errors, rpm, places.rise, teeth, strokes) : 0
  const reading = syncReading(series.sync, course, places)
  const cylinders = cylindersOf(reading, layout)
  const firstStroke = firstOf(places, course, strokes)
  const placed = (stroke: number) => ((stroke - firstStroke + strokes) % strokes) + 1
  const values = shares
    .map((percent, stroke) => ({
      position: placed(stroke),
      cylinder: cylinders[stroke] ?? null,
      percent,
      ...(plusMinus ? { plusMinus: Math.hypot(plusMinus[stroke] ?? 0, doubt) } : {}),
    }))
    .toSorted((a, b) => a.position - b.position)
  const facts: CrankFacts = {
    layout,
    reading,
    errors,
    doubt,
    spoiled,
    cycles: cycles.length,
    kept: kept.length,
    values,
    rpm,
    rise: places.rise,
  }
  return {
    method: crankContributionMethod,
    values,
    events: eventsOf(course, places, cycles, cylinders, placed, strokes),
    synced: reading?.kind === 'cycle',
    cycles: kept.length,
    rpm,
    remarks: crankRemarks(facts),
  }
}

const ofMean = (shares: number[]): number[] => {
  const mean = shares.reduce((sum, one) => sum + one, 0) / shares.length
  return shares.map(share => (100 * share) / mean)
}

function corrected(
  flat: Float64Array,
  course: SpeedCourse,
  turns: Float64Array,
  teeth: number,
  { errors }: ToothErrors,
): Float64Array {
  return flat.map((level, at) => {
    const turn = turns[at] ?? 0
    const place = Math.floor((turn - Math.floor(turn)) * teeth) % teeth
    return level - (errors[place] ?? 0) * (course.rpm[at] ?? 0)
  })
}

/** How far uneven teeth may move a share, in percent points: two standard deviations. */
function toothDoubt(
  { separated, unevenness, leftOver }: ToothErrors,
  rpm: number,
  rise: number,
  teeth: number,
  strokes: number,
): number {
  const inLevel = Math.max(1, (2 * levelReach * teeth * 2) / strokes)
  return (200 * (separated ? leftOver : unevenness) * rpm * Math.sqrt(2 / inLevel)) / rise
}

type CycleRises = { from: number; rises: number[] }

function risesOf(
  flat: Float64Array,
  phase: Float64Array,
  { begins, ends }: StrokePlaces,
  strokes: number,
): CycleRises[] {
  const first = Math.ceil(((phase[0] ?? 0) + levelReach - Math.min(...begins)) / strokes)
  const last = Math.floor(((phase.at(-1) ?? 0) - levelReach - Math.max(...ends)) / strokes)
  const cycles: CycleRises[] = []
  for (let cycle = first; cycle <= last; cycle += 1) {
    const rises = begins.map((begin, stroke) => {
      const end = ends[stroke] ?? begin
      return (
        levelAround(flat, phase, cycle * strokes + end) - levelAround(flat, phase, cycle * strokes + begin)
      )
    })
    cycles.push({ from: cycle * strokes, rises })
  }
  return cycles
}

function syncReading(
  sync: ThinSeries | undefined,
  course: SpeedCourse,
  places: StrokePlaces,
): SyncReading | null {
  if (!sync) return null
  const [begin, end] = [course.time[0] ?? 0, course.time.at(-1) ?? 0]
  const hint = { at: 0 }
  const phases = pulseTimes(sync)
    .filter(time => time >= begin && time <= end)
    .map(time => between(course.time, course.phase, time, hint))
  return readSync(phases, places.begins)
}

function cylindersOf(reading: SyncReading | null, { firingOrder }: Layout): (number | null)[] {
  if (reading?.kind !== 'cycle') return firingOrder.map(() => null)
  const one = firingOrder.indexOf(1)
  const strokes = firingOrder.length
  return firingOrder.map(
    (_, stroke) => firingOrder[(one + stroke - reading.hump + 2 * strokes) % strokes] ?? null,
  )
}

/** The stroke whose rise begins first in the recording is position 1. */
function firstOf({ begins }: StrokePlaces, { phase }: SpeedCourse, strokes: number): number {
  const start = phase[0] ?? 0
  const ahead = begins.map(begin => (((begin - start) % strokes) + strokes) % strokes)
  return ahead.indexOf(Math.min(...ahead))
}

function eventsOf(
  course: SpeedCourse,
  { begins }: StrokePlaces,
  cycles: CycleRises[],
  cylinders: (number | null)[],
  placed: (stroke: number) => number,
  strokes: number,
): FoundEvent[] {
  const [first, last] = [course.phase[0] ?? 0, course.phase.at(-1) ?? 0]
  const kept = new Set(cycles.filter(cycle => cycle.rises.every(Number.isFinite)).map(cycle => cycle.from))
  const hint = { at: 0 }
  const events: FoundEvent[] = []
  for (let from = Math.floor(first / strokes) * strokes - strokes; from <= last; from += strokes) {
    for (const [stroke, begin] of begins.entries()) {
      const at = from + begin
      if (at < first || at > last) continue
      events.push({
        time: between(course.phase, course.time, at, hint),
        position: placed(stroke),
        cylinder: cylinders[stroke] ?? null,
        leftOut: !kept.has(from),
      })
    }
  }
  return events.toSorted((a, b) => a.time - b.time)
}

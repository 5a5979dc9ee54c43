// From a recording of crank speed to the phase of the power strokes: by the teeth of a wheel, or by the speed itself.
import { evenSeries } from './even-series.ts'
import { steadiedPhase, summedPhase } from './phase.ts'
import type { Remark } from './recording.ts'
import type { SpeedCourse } from './speed-cycles.ts'
import type { ThinSeries } from './thin-series.ts'
import { type ToothEdges, turnsOf } from './tooth-turns.ts'

export type Followed = {
  course: SpeedCourse
  /** Crank turns at each sample, whole at the gap; null where there are no teeth. */
  turns: Float64Array | null
  teeth: number
  /** Turns left out. */
  spoiled: number
}
/** What was the matter and what to do. */
export type NotFollowed = { refused: Remark }

const notFollowed = (code: string, text: string): NotFollowed => ({ refused: { code, text } })

export function followTeeth(edges: ToothEdges, strokes: number): Followed | NotFollowed {
  const found = turnsOf(edges)
  if ('turns' in found) {
    const { time, turn, rpm, spoiled } = found.turns
    const phase = turn.map(one => (one * strokes) / 2)
    if (time.length < 4 * edges.teeth)
      return notFollowed(
        'too short',
        'The recording holds less than four turns. Record at least ten seconds of steady idle.',
      )
    return { course: { time, phase, rpm }, turns: turn, teeth: edges.teeth, spoiled }
  }
  if (found.why === 'no gap') {
    return notFollowed(
      'no gap',
      `No gap of ${edges.missing} missing teeth was found. Check the wheel that was chosen, and that every tooth gives one row.`,
    )
  }
  return notFollowed(
    'other wheel',
    `${found.teethBetween} teeth come between two gaps; a ${edges.teeth}-${edges.missing} wheel has ${edges.teeth - edges.missing}. Choose the wheel that fits.`,
  )
}

/** From speed over time: the angle is summed up, and held to the firing that shows in the speed. */
export function followSpeed(speed: ThinSeries, strokes: number): Followed | NotFollowed {
  const even = evenSeries(speed, 0, speed.time.length, Number.POSITIVE_INFINITY)
  const mean = even.level.reduce((sum, one) => sum + one, 0) / even.level.length
  const rate = (mean * strokes) / 120
  if (!(mean > 100) || !(mean < 10_000)) {
    return notFollowed(
      'speed unlikely',
      `The mean speed would be ${Math.round(mean)} rpm. Check the column and its unit.`,
    )
  }
  if (1 / even.step < 6 * rate) {
    return notFollowed(
      'too coarse',
      `At ${Math.round(mean)} rpm the ${strokes} cylinders fire ${Math.round(rate)} times a second; ${Math.round(1 / even.step)} samples a second are too few. Record with at least ${Math.ceil(10 * rate)}.`,
    )
  }
  const path = {
    time: Float64Array.from(even.level, (_, at) => even.start + at * even.step),
    rate: even.level.map(level => (level * strokes) / 120),
  }
  const phase = steadiedPhase(even, summedPhase(even, path), strokes)
  return { course: { time: path.time, phase, rpm: even.level }, turns: null, teeth: 0, spoiled: 0 }
}

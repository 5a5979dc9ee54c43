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
    const usual = usualSpeed(found.turns.rpm)
    if (typeof usual !== 'number') return usual
    const likely = (_: number, at: number) => isLikely(found.turns.rpm[at] ?? 0, usual)
    const [time, turn, rpm] = [found.turns.time, found.turns.turn, found.turns.rpm].map(one =>
      one.filter(likely),
    )
    const { spoiled } = found.turns
    if (!time || !turn || !rpm) return notFollowed('too short', 'The recording is empty.')
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

/** Middle speed, or why it is none of an engine: far off, or jumping about. */
function usualSpeed(rpm: Float64Array): number | NotFollowed {
  const ranked = rpm.toSorted()
  const usual = ranked[Math.floor(ranked.length / 2)] ?? Number.NaN
  if (!(usual > 100) || !(usual < 10_000)) {
    return notFollowed(
      'speed unlikely',
      `The usual speed would be ${Math.round(usual)} rpm. Check the column and its unit.`,
    )
  }
  const odd = rpm.reduce((count, one) => count + (isLikely(one, usual) ? 0 : 1), 0)
  if (odd > mostOdd * rpm.length) {
    return notFollowed(
      'speed unlikely',
      `The speed jumps: ${Math.round((100 * odd) / rpm.length)} % of the samples are far from the usual ${Math.round(usual)} rpm. Check the column, the unit, and the sensor.`,
    )
  }
  return usual
}

const isLikely = (rpm: number, usual: number) => rpm > usual / 3 && rpm < usual * 3
/** Share of samples that may be far off and are set right or left out. */
const mostOdd = 0.02

/** From speed over time: the angle is summed up, and held to the firing that shows in the speed. */
export function followSpeed(speed: ThinSeries, strokes: number): Followed | NotFollowed {
  const even = evenSeries(speed, 0, speed.time.length, Number.POSITIVE_INFINITY)
  const usual = usualSpeed(even.level)
  if (typeof usual !== 'number') return usual
  const rate = (usual * strokes) / 120
  if (1 / even.step < 6 * rate) {
    return notFollowed(
      'too coarse',
      `At ${Math.round(usual)} rpm the ${strokes} cylinders fire ${Math.round(rate)} times a second; ${Math.round(1 / even.step)} samples a second are too few. Record with at least ${Math.ceil(10 * rate)}.`,
    )
  }
  const level = even.level.map(one => (isLikely(one, usual) ? one : usual))
  const path = {
    time: Float64Array.from(level, (_, at) => even.start + at * even.step),
    rate: level.map(one => (one * strokes) / 120),
  }
  const phase = steadiedPhase({ ...even, level }, summedPhase(even, path), strokes)
  return { course: { time: path.time, phase, rpm: level }, turns: null, teeth: 0, spoiled: 0 }
}

// Makes recordings of crank speed at idle with known contributions: each power stroke lifts the speed, compression and
// load take it down again.
import type { Layout } from '../../engine/layout-schema.ts'
import { seeded } from './random.ts'

export type CrankPlan = {
  layout: Layout
  /** Work of each cylinder in percent by number; 100 where not named. */
  percent?: Record<number, number>
  seed?: number
  seconds?: number
  rpm?: number
  /** Change of speed from start to end, as a share. */
  drift?: number
  teeth?: number
  missing?: number
  /** Standard deviation of each tooth's place, as a share of a pitch; the same every turn. */
  toothError?: number
  /** Standard deviation of each edge's time, as a share of a pitch; new each time. */
  jitter?: number
  /** Work of single strokes varies by this share, as combustion does. */
  cycleSpread?: number
  /** Share of edges lost. */
  lost?: number
}

export type MadeCrank = {
  /** Seconds of each tooth edge. */
  edges: Float64Array
  /** Speed by time at 5000 samples a second. */
  time: Float64Array
  rpm: Float64Array
  sync: Float64Array
  /** Rise of speed in each cylinder's own stroke, as a share of the mean rise, without noise. */
  truth: Map<number, number>
}

/** Torque of one cylinder over its cycle, degrees after its top dead centre; mean 0 with the load that balances it. */
function torque(degrees: number, work: number): number {
  const place = ((((degrees + 360) % 720) + 720) % 720) - 360
  if (place < -150 || place > 150) return 0
  const compression = -Math.sin((Math.PI * place) / 150) * Math.exp(-((place / 55) ** 2)) * -1
  const power = place > 0 ? work * 1.5 * Math.sin((Math.PI * place) / 150) * Math.exp(-place / 70) : 0
  return compression + power
}

export function crankRecording(plan: CrankPlan): MadeCrank {
  const { layout, seconds = 15, rpm = 800, drift = 0, teeth = 60, missing = 2 } = plan
  const { toothError = 0, jitter = 0, cycleSpread = 0, lost = 0 } = plan
  const random = seeded(plan.seed ?? 1)
  const { firingOrder, intervalsDeg } = layout
  const tops = firingOrder.map((_, at) => intervalsDeg.slice(0, at).reduce((sum, one) => sum + one, 0))
  const works = firingOrder.map(cylinder => (plan.percent?.[cylinder] ?? 100) / 100)

  // Sum of the work over a cycle, taken up by an even load.
  const steps = 1440
  const meanOf = (values: number[]) => values.reduce((sum, one) => sum + one, 0) / values.length
  const load = meanOf(
    Array.from({ length: steps }, (_, step) =>
      tops.reduce((sum, top, at) => sum + torque(step / 2 - top, works[at] ?? 1), 0),
    ),
  )
  const swing = 25_000 / rpm
  const truth = truthOf(firingOrder, tops, works, load)

  const errors = Float64Array.from({ length: teeth }, () => toothError * random.normal())
  const edges: number[] = []
  const [time, speeds, sync]: number[][] = [[], [], []]
  let angle = random.uniform() * 720
  let offset = 0
  let now = 0
  let strokeWork = works.map(work => work * (1 + cycleSpread * random.normal()))
  let nextSample = 0
  let tooth = Math.ceil((angle / 360) * teeth)
  const step = 0.25
  while (now < seconds) {
    const before = angle
    angle += step
    for (const [at, top] of tops.entries()) {
      const passed = Math.floor((angle - top) / 720) !== Math.floor((before - top) / 720)
      if (passed)
        strokeWork = strokeWork.map((work, place) =>
          place === at ? (works[at] ?? 1) * (1 + cycleSpread * random.normal()) : work,
        )
    }
    const pull = tops.reduce((sum, top, at) => sum + torque(angle - top, strokeWork[at] ?? 1), 0) - load
    const base = rpm * (1 + drift * (now / seconds - 0.5))
    // The same work changes a faster crank's speed by less. A slow governor holds the mean.
    offset += (swing * (rpm / base) * pull * step) / 30 - offset * 0.0002 * step
    const speed = base + offset
    const took = step / (speed * 6)
    const top = tops[firingOrder.indexOf(1)] ?? 0
    while (nextSample <= now + took && nextSample < seconds) {
      time?.push(nextSample)
      speeds?.push(speed)
      sync?.push((((angle - top + 15) % 720) + 720) % 720 < 10 ? 5 : 0)
      nextSample += 1 / 5000
    }
    while (((tooth + (errors[tooth % teeth] ?? 0)) * 360) / teeth <= angle) {
      const exact = ((tooth + (errors[tooth % teeth] ?? 0)) * 360) / teeth
      const share = (exact - before) / step
      const isThere = tooth % teeth < teeth - missing
      if (isThere && random.uniform() >= lost) {
        edges.push(now + share * took + (jitter * random.normal() * 60) / (speed * teeth))
      }
      tooth += 1
    }
    now += took
  }
  return {
    edges: Float64Array.from(edges),
    time: Float64Array.from(time ?? []),
    rpm: Float64Array.from(speeds ?? []),
    sync: Float64Array.from(sync ?? []),
    truth,
  }
}

/** Rise from the lowest to the highest speed within each stroke's own interval, on the exact curve. */
function truthOf(
  firingOrder: readonly number[],
  tops: number[],
  works: number[],
  load: number,
): Map<number, number> {
  const course: number[] = []
  let level = 0
  for (let step = 0; step < 1440; step += 1) {
    level += tops.reduce((sum, top, at) => sum + torque(step / 2 - top, works[at] ?? 1), 0) - load
    course.push(level)
  }
  const at = (degrees: number) => course[((Math.round(degrees * 2) % 1440) + 1440) % 1440] ?? 0
  const shape = 720 / firingOrder.length
  // Where in a stroke the mean curve is lowest and highest.
  const mean = Array.from({ length: Math.round(shape * 2) }, (_, half) =>
    tops.reduce((sum, top) => sum + at(top - shape / 2 + half / 2), 0),
  )
  const lowest = mean.indexOf(Math.min(...mean)) / 2 - shape / 2
  let highest = mean.indexOf(Math.max(...mean)) / 2 - shape / 2
  if (highest < lowest) highest += shape
  const rises = tops.map(top => at(top + highest) - at(top + lowest))
  const middle = rises.reduce((sum, one) => sum + one, 0) / rises.length
  return new Map(firingOrder.map((cylinder, place) => [cylinder, (100 * (rises[place] ?? 0)) / middle]))
}

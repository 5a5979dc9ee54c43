// Makes recordings of starter current with known relative compression: one hump a compression on a friction level.
import type { Layout } from '../../engine/layout-schema.ts'
import { seeded } from './random.ts'
import type { StarterRecording } from './whole-recording.ts'

export type StarterPlan = {
  layout: Layout
  /** Relative compression of each cylinder in percent, by cylinder number; 100 where not named. */
  percent?: Record<number, number>
  seed?: number
  /** Samples a second. */
  rate?: number
  seconds?: number
  rpm?: number
  /** Change of cranking speed from start to end, as a share. */
  drift?: number
  /** Standard deviation of the noise of each sample as a share of the hump height. */
  noise?: number
  /** Amplitude of mains hum as a share of the hump height, and its frequency. */
  hum?: number
  humHz?: number
  /** Seconds of rest before the starter is switched on and after it is let go; none for a recording cut to the cranking. */
  rest?: number
  inRush?: boolean
  /** Current lost to a sagging battery by the end, as a share. */
  sag?: number
  offset?: number
  /** The channel saturates at this current. */
  clipAt?: number
  /** Share of samples missing, in runs of up to 20 ms. */
  missing?: number
  sync?: 'cycle' | 'turn'
  /** Crank degrees before top dead centre of the sync pulse. */
  syncBefore?: number
  /** Full width at half height of a hump in crank degrees. */
  widthDeg?: number
  shape?: 'bell' | 'cosine' | 'leaning'
}

const humpHeight = 80
const friction = 110

/** A hump of height 1 at 0 degrees; all have the same width at half height. */
function humpAt(shape: NonNullable<StarterPlan['shape']>, widthDeg: number, degrees: number): number {
  const away = ((((degrees + 360) % 720) + 720) % 720) - 360
  if (shape === 'cosine') {
    return Math.abs(away) < widthDeg ? 0.5 + 0.5 * Math.cos((Math.PI * away) / widthDeg) : 0
  }
  const half = widthDeg / 2.355
  if (shape === 'bell') return Math.exp(-0.5 * (away / half) ** 2)
  // Rises slower than it falls, with the same width at half height.
  const side = away < 0 ? half * 1.2 : half * 0.8
  return Math.exp(-0.5 * (away / side) ** 2)
}

export type MadeRecording = {
  recording: StarterRecording
  /** Percent of the highest, by cylinder number. */
  truth: Map<number, number>
  /** Seconds of top dead centre of each compression, with its cylinder. */
  compressions: { time: number; cylinder: number }[]
}

export function starterRecording(plan: StarterPlan): MadeRecording {
  const { layout, rate = 10_000, seconds = 8, rpm = 200, drift = 0, noise = 0, hum = 0, humHz = 50 } = plan
  const { rest = 0.4, inRush = true, sag = 0, offset = 0, missing = 0, sync, syncBefore = 8 } = plan
  const { widthDeg = 64, shape = 'bell', clipAt = Number.POSITIVE_INFINITY } = plan
  const random = seeded(plan.seed ?? 1)
  const { firingOrder, intervalsDeg } = layout
  const angles = firingOrder.map((_, at) => intervalsDeg.slice(0, at).reduce((sum, one) => sum + one, 0))
  const heights = firingOrder.map(cylinder => (plan.percent?.[cylinder] ?? 100) / 100)
  const startAngle = random.uniform() * 720
  const humLag = random.uniform() * 2 * Math.PI

  // One cycle of the current by half degrees, so that a long recording costs little.
  const curve = Float64Array.from({ length: 1440 }, (_, half) =>
    angles.reduce(
      (sum, angle, at) => sum + (heights[at] ?? 0) * humpAt(shape, widthDeg, half / 2 - angle),
      0,
    ),
  )
  const count = Math.round(seconds * rate)
  const time = new Float64Array(count)
  const amperes = new Float64Array(count)
  const pulses = new Float64Array(count)
  const compressions: MadeRecording['compressions'] = []
  const turning = seconds - 2 * rest
  let angle = startAngle
  let gap = 0
  for (let index = 0; index < count; index += 1) {
    const now = index / rate
    time[index] = now
    const into = now - rest
    let value = 0
    if (into >= 0 && into < turning) {
      const along = into / turning
      const speed = rpm * (1 + drift * (along - 0.5)) * (inRush ? 1 - Math.exp(-into / 0.06) : 1)
      const before = angle
      angle += (speed * 6) / rate
      for (const [at, top] of angles.entries()) {
        const turns = Math.floor((angle - top) / 720)
        if (turns === Math.floor((before - top) / 720)) continue
        compressions.push({ time: now, cylinder: firingOrder[at] ?? 0 })
      }
      const pulseAt = (angles[firingOrder.indexOf(1)] ?? 0) - syncBefore
      const period = sync === 'turn' ? 360 : 720
      const phase = (((angle - pulseAt) % period) + period) % period
      pulses[index] = phase < 4 ? 5 : 0
      const place = ((angle % 720) + 720) % 720
      value = (friction + humpHeight * (curve[Math.floor(place * 2)] ?? 0)) * (1 - sag * along)
      if (inRush) value += 550 * Math.exp(-into / 0.05)
    }
    value +=
      offset + humpHeight * (noise * random.normal() + hum * Math.sin(2 * Math.PI * humHz * now + humLag))
    if (gap === 0 && missing > 0 && random.uniform() < missing / (0.01 * rate))
      gap = Math.ceil(random.uniform() * 0.02 * rate)
    amperes[index] = gap > 0 ? Number.NaN : Math.min(value, clipAt)
    gap = Math.max(0, gap - 1)
    pulses[index] = (pulses[index] ?? 0) + 0.05 * random.normal()
  }
  const highest = Math.max(...heights)
  return {
    recording: { time, amperes, ...(sync ? { sync: pulses } : {}) },
    truth: new Map(firingOrder.map((cylinder, at) => [cylinder, (100 * (heights[at] ?? 0)) / highest])),
    compressions,
  }
}

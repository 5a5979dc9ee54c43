// A small physical model of an engine turned by its starter: gas, leak, crank, flywheel and motor. It knows nothing of
// hump shapes, so it tells how well the fitted shapes hold up. Figures are those of a common half-litre cylinder.
import type { Layout } from '../../engine/layout-schema.ts'
import { seeded } from './random.ts'
import type { StarterRecording } from './whole-recording.ts'

export type CrankedEngine = {
  layout: Layout
  /** Leak of each cylinder by number, per second of time at pressure; 0 where not named. */
  leak?: Record<number, number>
  /** Moment of inertia of all that turns, kg m². */
  inertia?: number
  seconds?: number
  rate?: number
  /** Standard deviation of noise in amperes. */
  noise?: number
  seed?: number
}

const area = 0.0058
const crankRadius = 0.043
const rodLength = 0.145
const ratio = 10
const polytropic = 1.28
const airPressure = 1e5
const stallTorque = 190
const stallCurrent = 720
const freeSpeed = (360 * 2 * Math.PI) / 60
const frictionTorque = 35
const closesDeg = 50

const swept = 2 * crankRadius * area
const clearance = swept / (ratio - 1)

/** Volume above the piston and its change with angle, angle in radians after top dead centre. */
function piston(angle: number): { volume: number; slope: number } {
  const sine = Math.sin(angle)
  const rod = Math.sqrt(rodLength ** 2 - (crankRadius * sine) ** 2)
  const down = crankRadius * (1 - Math.cos(angle)) + rodLength - rod
  return {
    volume: clearance + area * down,
    slope: area * (crankRadius * sine + (crankRadius ** 2 * sine * Math.cos(angle)) / rod),
  }
}

/** Recording, and for each cylinder its peak gauge pressure in percent of the highest. */
export function crankedEngine(plan: CrankedEngine): {
  recording: StarterRecording
  truth: Map<number, number>
} {
  const { layout, leak = {}, inertia = 0.25, seconds = 8, rate = 5000, noise = 2 } = plan
  const random = seeded(plan.seed ?? 1)
  const { firingOrder, intervalsDeg } = layout
  const tops = firingOrder.map((_, at) => intervalsDeg.slice(0, at).reduce((sum, one) => sum + one, 0))
  const inner = 4
  const step = 1 / rate / inner
  const count = Math.round(seconds * rate)
  const [time, amperes, sync] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)]
  const gas = firingOrder.map(() => ({ pressure: airPressure, volume: 0, peaks: [] as number[], peak: 0 }))
  let angle = random.uniform() * 720
  let speed = 0
  for (let index = 0; index < count * inner; index += 1) {
    let load = frictionTorque * Math.tanh(speed * 4)
    for (const [at, one] of gas.entries()) {
      const place = ((((angle - (tops[at] ?? 0)) % 720) + 1080) % 720) - 360
      const { volume, slope } = piston((place * Math.PI) / 180)
      if (place > -180 + closesDeg && place < 180 - closesDeg) {
        if (one.volume > 0) {
          one.pressure *= (one.volume / volume) ** polytropic
          const lost = (leak[firingOrder[at] ?? 0] ?? 0) + 0.4
          one.pressure -= (one.pressure - airPressure) * lost * step
        }
        one.volume = volume
        one.peak = Math.max(one.peak, one.pressure - airPressure)
      } else {
        if (one.peak > 0) one.peaks.push(one.peak)
        one.peak = 0
        one.pressure = airPressure
        one.volume = 0
      }
      load -= (one.pressure - airPressure) * slope
    }
    const torque = stallTorque * (1 - speed / freeSpeed)
    speed = Math.max(0, speed + ((torque - load) / inertia) * step)
    angle += (speed * step * 180) / Math.PI
    if (index % inner === 0) {
      const at = index / inner
      time[at] = at / rate
      amperes[at] = (torque / stallTorque) * stallCurrent + noise * random.normal()
      const phase = (((angle - (tops[firingOrder.indexOf(1)] ?? 0) + 10) % 720) + 720) % 720
      sync[at] = (phase < 4 ? 5 : 0) + 0.02 * random.normal()
    }
  }
  const mean = gas.map(({ peaks }) => {
    const late = peaks.slice(2)
    return late.reduce((sum, one) => sum + one, 0) / late.length
  })
  const highest = Math.max(...mean)
  return {
    recording: { time, amperes, sync },
    truth: new Map(firingOrder.map((cylinder, at) => [cylinder, (100 * (mean[at] ?? 0)) / highest])),
  }
}

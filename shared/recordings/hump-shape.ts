// The shape one compression leaves in the starter current: a bell around top dead centre. The charge gives back after
// top dead centre what it took before, and the more so the less the flywheel evens out, so the bell may lean and may be
// followed by a dip. The shape is fitted to the recording and held near the usual one where the recording is silent.

export type HumpShape = {
  /** Standard deviation of the bell in crank degrees. */
  widthDeg: number
  /** Natural logarithm of the rising flank's width over the falling one's. */
  lean: number
  /** 2 for a normal bell, more for a flatter top with steeper flanks. */
  power: number
  /** How fast the starter recovers from a change of load, per crank degree; 0 where it is taken not to matter. */
  fadePerDeg: number
}

/** Pressure of a cranked cylinder stays above half its peak for some 60 to 70 crank degrees: calculated. */
export const usualShape: HumpShape = { widthDeg: 27, lean: 0, power: 2, fadePerDeg: 0 }

/** How far shapes stray from the usual one: one standard deviation of each. */
export const shapeSpread: HumpShape = { widthDeg: 6, lean: 0.25, power: 0.5, fadePerDeg: 0.004 }

export const usualFade = 0.006

const fineSteps = 720

/** How unusual a shape is, in squared standard deviations; infinity outside what can be. */
export function unusual(shape: HumpShape): number {
  const { widthDeg, lean, power, fadePerDeg } = shape
  if (widthDeg < 10 || widthDeg > 60 || Math.abs(lean) > 1 || power < 1.2 || power > 5 || fadePerDeg < 0) {
    return Number.POSITIVE_INFINITY
  }
  return (
    ((widthDeg - usualShape.widthDeg) / shapeSpread.widthDeg) ** 2 +
    (lean / shapeSpread.lean) ** 2 +
    ((power - usualShape.power) / shapeSpread.power) ** 2 +
    (fadePerDeg === 0 ? 0 : ((fadePerDeg - usualFade) / shapeSpread.fadePerDeg) ** 2)
  )
}

export type HumpLevels = {
  /** What a compression leaves that gives back all it took; bell height 1. */
  hump: Float64Array
  /** What is added where the charge gives less back, as through a leak: current that dies away slowly afterwards. */
  tail: Float64Array
}

/** Levels for each degree of one cycle, top dead centre at 0, repeated every 720 degrees. */
export function humpLevels(shape: HumpShape): HumpLevels {
  // The same half-height width for every power.
  const scale = shape.widthDeg * (2 * Math.LN2) ** (0.5 - 1 / shape.power)
  const side = Math.exp(shape.lean / 2)
  const stored = Float64Array.from({ length: fineSteps }, (_, degree) => {
    const rising = degree > fineSteps / 2
    const away = (rising ? fineSteps - degree : degree) / (rising ? scale * side : scale / side)
    return Math.exp(-0.5 * away ** shape.power)
  })
  if (shape.fadePerDeg === 0) return { hump: stored, tail: new Float64Array(fineSteps) }
  // The current follows the torque, the slope of what is stored, through the lag of flywheel and starter.
  const keep = Math.exp(-shape.fadePerDeg)
  const hump = new Float64Array(fineSteps)
  const tail = new Float64Array(fineSteps)
  let [taken, given] = [0, 0]
  // By the second round what the first began with has died away; the rest closes the circle.
  for (let round = 0; round < 4; round += 1) {
    for (let degree = 0; degree < fineSteps; degree += 1) {
      const change = (stored[degree] ?? 0) - (stored[(degree + fineSteps - 1) % fineSteps] ?? 0)
      taken = keep * (taken + Math.max(0, change))
      given = keep * (given + Math.max(0, -change))
      hump[degree] = taken - given
      tail[degree] = given
    }
  }
  return { hump, tail }
}

/** Level at any crank angle by straight lines between degrees. */
export function levelAt(levels: Float64Array, degrees: number): number {
  const turned = ((degrees % fineSteps) + fineSteps) % fineSteps
  const below = Math.floor(turned)
  const share = turned - below
  const left = levels[below % fineSteps] ?? 0
  return left + share * ((levels[(below + 1) % fineSteps] ?? 0) - left)
}

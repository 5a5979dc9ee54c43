// The leak of a cylinder as a hole: two orifices in series, the tester's and the leak. Unlike the percentage it does not
// belong to the tester, so that other orifices can be put beside it. An estimate: same discharge coefficient for both.
import { pressureRatio, type Atmosphere } from './atmosphere.ts'

/** Ratio of specific heats of air. */
const gamma = 1.4
const choked = (2 / (gamma + 1)) ** (gamma / (gamma - 1))
const seaLevelPsi = 14.695949

/** Isentropic flow through an orifice, as a part of its greatest; `ratio` is pressure after over before, absolute. */
function flow(ratio: number): number {
  const at = Math.max(ratio, choked)
  return Math.sqrt(at ** (2 / gamma) - at ** ((gamma + 1) / gamma))
}

/** Diameter in mm; gauge pressures in psi, `held` below `supply` and above 0, else null. */
export function holeMillimetres(
  orificeMm: number,
  supply: number,
  held: number,
  atmosphere: Atmosphere,
): number | null {
  if (orificeMm <= 0 || held <= 0 || held >= supply) return null
  const air = seaLevelPsi * pressureRatio(atmosphere)
  const into = (supply + air) * flow((held + air) / (supply + air))
  const out = (held + air) * flow(air / (held + air))
  return orificeMm * Math.sqrt(into / out)
}

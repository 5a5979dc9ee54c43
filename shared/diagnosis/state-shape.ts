// The four shapes of a state, for screen and paper alike: from an open dashed ring to a solid hexagon, more ink the worse.
// Round is a plug at rest, the hexagon is where the wrench goes. Told apart without colour, in 1-bit copies too.
import type { State } from './condition-map.ts'

/** SVG path data around (0, 0), inside a circle of radius 10. */
export type StateShape = {
  outline: { path: string; width: number; dash?: readonly [number, number] } | undefined
  /** Filled by the even-odd rule. */
  solid: string | undefined
}

const ring = (radius: number): string =>
  `M ${-radius} 0 A ${radius} ${radius} 0 1 1 ${radius} 0 A ${radius} ${radius} 0 1 1 ${-radius} 0 Z`

const hexagon = 'M 0 -9 L 7.8 -4.5 L 7.8 4.5 L 0 9 L -7.8 4.5 L -7.8 -4.5 Z'
const largeHexagon = 'M 0 -10 L 8.7 -5 L 8.7 5 L 0 10 L -8.7 5 L -8.7 -5 Z'

export const stateShapes: Readonly<Record<State, StateShape>> = {
  unknown: { outline: { path: ring(8.2), width: 2.2, dash: [4.3, 4.3] }, solid: undefined },
  sound: { outline: { path: ring(8.2), width: 2.2 }, solid: ring(2.8) },
  watch: {
    outline: { path: hexagon, width: 2.2 },
    solid: 'M -7.8 0 L 7.8 0 L 7.8 4.5 L 0 9 L -7.8 4.5 Z',
  },
  fault: {
    outline: undefined,
    // A slanting crack from edge to edge.
    solid: `${largeHexagon} M -6.2 2.6 L 4.4 -5.6 L 6.2 -3.2 L -4.4 5 Z`,
  },
}

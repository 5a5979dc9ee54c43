// Noisy-OR with leak: the noisy-MAX of two states, written by chances alone. Source: Pearl 1988, Henrion 1989 (from memory).
import type { NoisyMax, NoisyOr } from './network.ts'

/** The same relation as a noisy-MAX; a bare chance is that of a two-state parent in state 1. */
export function asNoisyMax(noisy: NoisyOr): NoisyMax {
  return {
    child: noisy.child,
    leak: [1 - noisy.leak, noisy.leak],
    causes: noisy.causes.map(({ parent, chance }) => ({
      parent,
      effect: (typeof chance === 'number' ? [0, chance] : chance).flatMap(each => [1 - each, each]),
    })),
  }
}

/**
 * The full table P(child | parents), the values of [...parents, child], child fastest:
 * P(absent) = (1 - leak) * product over parents of (1 - chance in their state).
 */
export function noisyOrTable(noisy: NoisyOr): Float64Array {
  const chances = noisy.causes.map(({ chance }) => (typeof chance === 'number' ? [0, chance] : chance))
  let absent = [1 - noisy.leak]
  for (const column of chances) absent = absent.flatMap(so => column.map(chance => so * (1 - chance)))
  return Float64Array.from(absent.flatMap(chance => [chance, 1 - chance]))
}

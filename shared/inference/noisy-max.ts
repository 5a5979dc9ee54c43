// Noisy-MAX: the child is the largest of independent effects, one of each parent and the leak. Full table, and the chain of
// small tables that equals it. Source: Diez & Galan, "Efficient computation for the noisy MAX", 2003 (from memory).
import type { NoisyMax } from './network.ts'

export type NoisyMaxShape = { childStates: number; parentStates: readonly number[] }

/** One link of the chain, over [before, parent, after] (first link: [parent, after]), last fastest. */
export type ChainLink = { parent: string; values: Float64Array }

/**
 * The full table P(child | parents): the values of [...parents, child], child fastest. Exact, but as long as the product of
 * all states.
 */
export function noisyMaxTable(noisy: NoisyMax, shape: NoisyMaxShape): Float64Array {
  const { childStates, parentStates } = shape
  const rows = parentStates.reduce((product, states) => product * states, 1)
  const table = new Float64Array(rows * childStates)
  for (let row = 0; row < rows; row += 1) {
    const largest = table.subarray(row * childStates, (row + 1) * childStates)
    largest.set(Float64Array.from(noisy.leak))
    let rest = row
    for (let at = parentStates.length - 1; at >= 0; at -= 1) {
      const states = parentStates[at] ?? 1
      takeIn(largest, noisy.causes[at]?.effect ?? [], (rest % states) * childStates)
      rest = Math.floor(rest / states)
    }
  }
  return table
}

/**
 * Turns the distribution of something into that of the larger of it and one more effect, whose distribution begins at `from`.
 * Written without differences, so that what has probability 0 keeps exactly 0.
 */
function takeIn(largest: Float64Array, effect: ArrayLike<number>, from: number): void {
  let below = 0
  let effectUpTo = 0
  for (let y = 0; y < largest.length; y += 1) {
    const before = largest[y] ?? 0
    const own = effect[from + y] ?? 0
    effectUpTo += own
    largest[y] = before * effectUpTo + below * own
    below += before
  }
}

/** The same child as a chain: each link takes the larger of what came before and one parent's effect. */
export function noisyMaxChain(noisy: NoisyMax, shape: NoisyMaxShape): ChainLink[] {
  return noisy.causes.map((cause, at) => {
    const parentStates = shape.parentStates[at] ?? 1
    const values =
      at === 0
        ? noisyMaxTable({ ...noisy, causes: [cause] }, { ...shape, parentStates: [parentStates] })
        : linkTable(cause.effect, parentStates, shape.childStates)
    return { parent: cause.parent, values }
  })
}

/** P(after | before, parent) for after = max(before, effect). */
function linkTable(effect: ArrayLike<number>, parentStates: number, childStates: number): Float64Array {
  const table = new Float64Array(childStates * parentStates * childStates)
  for (let before = 0; before < childStates; before += 1) {
    for (let parent = 0; parent < parentStates; parent += 1) {
      const row = (before * parentStates + parent) * childStates
      for (let y = 0; y < childStates; y += 1) {
        const after = Math.max(y, before)
        table[row + after] = (table[row + after] ?? 0) + (effect[parent * childStates + y] ?? 0)
      }
    }
  }
  return table
}

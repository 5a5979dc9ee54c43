// A table over variables known by number, and where its cells lie.

/** `values` row by row: the last variable of `scope` runs fastest. `cards` are the numbers of states, in scope order. */
export type Factor = { scope: readonly number[]; cards: readonly number[]; values: Float64Array }

/** Scope and numbers of states, without the values. */
export type FactorShape = Pick<Factor, 'scope' | 'cards'>

export const sizeOf = (cards: readonly number[]): number => cards.reduce((size, card) => size * card, 1)

/** Distance in the flat table between neighbouring states of each variable of a scope. */
function stridesOf(cards: readonly number[]): number[] {
  const strides = Array.from(cards, () => 1)
  for (let at = cards.length - 2; at >= 0; at -= 1) {
    strides[at] = (strides[at + 1] ?? 1) * (cards[at + 1] ?? 1)
  }
  return strides
}

/** The stride in `of` for each variable of `scope`; 0 where `of` does not have it. */
export function stridesWithin(scope: readonly number[], of: FactorShape): number[] {
  const own = stridesOf(of.cards)
  return scope.map(variable => own[of.scope.indexOf(variable)] ?? 0)
}

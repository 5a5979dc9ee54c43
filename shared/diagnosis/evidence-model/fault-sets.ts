// Sets of at most two faults as the states of one variable, with their chance and what the bound leaves out.

export type FaultSets<Id extends string> = {
  /** The empty set first, then the single faults, then the twos. */
  sets: readonly (readonly Id[])[]
  /** Sums to 1: the chances given that no more than two are there. */
  prior: Float64Array
  /** Chance that more than two would be there, were each to come by itself. */
  leftOut: number
}

/** `priorOf` gives each fault's own chance; faults come independently of each other. */
export function faultSets<Id extends string>(ids: readonly Id[], priorOf: (id: Id) => number): FaultSets<Id> {
  const odds = new Map(ids.map(id => [id, priorOf(id) / (1 - priorOf(id))]))
  const oddsOf = (id: Id): number => odds.get(id) ?? 0
  const none = ids.reduce((chance, id) => chance * (1 - priorOf(id)), 1)
  const sets: Id[][] = [
    [],
    ...ids.map(id => [id]),
    ...ids.flatMap((a, i) => ids.slice(i + 1).map(b => [a, b])),
  ]
  const chances = sets.map(set => set.reduce((chance, id) => chance * oddsOf(id), none))
  const sum = chances.reduce((all, one) => all + one, 0)
  return { sets, prior: Float64Array.from(chances, one => one / sum), leftOut: Math.max(0, 1 - sum) }
}

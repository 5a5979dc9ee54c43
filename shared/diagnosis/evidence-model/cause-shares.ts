// The chance of each cause, read off a posterior: of each cylinder, of each web, of the engine.
import { marginal } from '../../inference/posterior.ts'
import type { Posterior } from '../../inference/propagate.ts'
import { neighbourGasket } from './causes.ts'
import { type EngineModel, engineVariable } from './engine-model.ts'
import { valueOrThrow } from './known-good.ts'

export type Share = {
  cause: string
  /** Absent for the whole engine. */
  cylinder?: number
  /** The cylinders that share it, for a fault of a group or between neighbours. */
  cylinders?: readonly number[]
  chance: number
}

/** In an order that is the same for every posterior of the model. */
export function causeShares(model: EngineModel, posterior: Posterior): Share[] {
  const of = (variable: string) => valueOrThrow(marginal(posterior, variable))
  return [
    ...model.cylinders.flatMap(({ cylinder, variable }) =>
      added(
        model.cylinderSets,
        of(variable),
        cause => ({ cause, cylinder }),
        cause => cause,
      ),
    ),
    ...model.webs.map(({ variable, between }) => ({
      cause: neighbourGasket,
      cylinders: between,
      chance: of(variable)[1] ?? 0,
    })),
    ...added(
      model.engineSets,
      of(engineVariable),
      ({ cause, cylinders }) => ({ cause, ...(cylinders ? { cylinders } : {}) }),
      ({ cause, cylinders }) => `${cause} ${cylinders?.join(' ') ?? ''}`,
    ),
  ]
}

function added<Fault>(
  sets: readonly (readonly Fault[])[],
  chances: ArrayLike<number>,
  shareOf: (fault: Fault) => Omit<Share, 'chance'>,
  keyOf: (fault: Fault) => string,
): Share[] {
  const found = new Map<string, Share>()
  for (const [state, set] of sets.entries())
    for (const fault of set) {
      const key = keyOf(fault)
      const before = found.get(key) ?? { ...shareOf(fault), chance: 0 }
      found.set(key, { ...before, chance: before.chance + (chances[state] ?? 0) })
    }
  return [...found.values()]
}

// The network of one layout: the engine's faults, a gasket web between neighbours, and the faults of each cylinder, which
// come about independently and meet only in what is seen.
import type { Layout } from '../../engine/layout-schema.ts'
import { cylindersOf } from '../../engine/relations.ts'
import { type CompiledNetwork, compileNetwork } from '../../inference/compile.ts'
import { valueOrThrow } from './known-good.ts'
import type { Fault } from '../next-test/planning-view.ts'
import {
  type CauseId,
  type CylinderCause,
  cylinderCauseIds,
  cylinderCauses,
  neighbourGasket,
  pairCauses,
} from './causes.ts'
import { type EngineFault, engineSets } from './engine-sets.ts'
import { faultSets } from './fault-sets.ts'

export type CylinderPart = {
  cylinder: number
  variable: string
  /** Webs to its neighbours: variables of two states. */
  webs: readonly string[]
  slot: string
}

export type EngineModel = {
  layout: Layout
  engineSets: readonly (readonly EngineFault[])[]
  cylinderSets: readonly (readonly CylinderCause[])[]
  cylinders: readonly CylinderPart[]
  /** Variable of each web and the cylinders beside it. */
  webs: readonly { variable: string; between: readonly [number, number] }[]
  compiled: CompiledNetwork
  /** Chance, before anything is seen, of more faults at once than the model can say. */
  leftOut: number
}

const cylinderFaults = faultSets(cylinderCauseIds, id => cylinderCauses[id].prior)
export const engineVariable = 'engine'

export function engineModel(layout: Layout): EngineModel {
  const engine = engineSets(layout)
  const webs = layout.banks.flatMap(({ cylinders }) =>
    cylinders.slice(1).map((cylinder, at) => {
      const before = cylinders[at] ?? cylinder
      return { variable: `web ${before}-${cylinder}`, between: [before, cylinder] as const }
    }),
  )
  const cylinders = cylindersOf(layout).map(cylinder => ({
    cylinder,
    variable: `cylinder ${cylinder}`,
    webs: webs.filter(web => web.between.includes(cylinder)).map(web => web.variable),
    slot: `seen on ${cylinder}`,
  }))
  const web = pairCauses[neighbourGasket].prior
  const compiled = compileNetwork({
    variables: [
      { name: engineVariable, states: engine.sets.length },
      ...webs.map(({ variable }) => ({ name: variable, states: 2 })),
      ...cylinders.map(({ variable }) => ({ name: variable, states: cylinderFaults.sets.length })),
    ],
    tables: [
      { child: engineVariable, parents: [], values: engine.prior },
      ...webs.map(({ variable }) => ({ child: variable, parents: [], values: [1 - web, web] })),
      ...cylinders.map(({ variable }) => ({ child: variable, parents: [], values: cylinderFaults.prior })),
    ],
    slots: cylinders.map(({ slot, webs: own, variable }) => ({
      name: slot,
      scope: [engineVariable, ...own, variable],
    })),
  })
  const leftOut = 1 - cylinders.reduce(within => within * (1 - cylinderFaults.leftOut), 1 - engine.leftOut)
  return {
    layout,
    engineSets: engine.sets,
    cylinderSets: cylinderFaults.sets,
    cylinders,
    webs,
    compiled: valueOrThrow(compiled),
    leftOut,
  }
}

/** The faults that a state of a variable stands for. */
export function faultsOf(model: EngineModel, variable: string, state: number): Fault[] {
  if (variable === engineVariable) {
    const set = model.engineSets[state] ?? []
    return set.map(({ cause, cylinders }) =>
      cylinders?.[0] === undefined ? { cause } : { cause, cylinder: cylinders[0] },
    )
  }
  const web = model.webs.find(one => one.variable === variable)
  if (web) return state === 1 ? [{ cause: neighbourGasket, cylinder: web.between[0] }] : []
  const part = model.cylinders.find(one => one.variable === variable)
  const set: readonly CauseId[] = model.cylinderSets[state] ?? []
  return part ? set.map(cause => ({ cause, cylinder: part.cylinder })) : []
}

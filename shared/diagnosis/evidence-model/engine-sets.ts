// The states of the engine variable: sets of engine-wide faults, then one fault each that a group of cylinders shares.
import type { Layout } from '../../engine/layout-schema.ts'
import { companion, cylindersOf, firingSuccessor } from '../../engine/relations.ts'
import {
  type CauseId,
  type EngineCause,
  engineCauseIds,
  engineCauses,
  type GroupCause,
  groupCauseIds,
  groupCauses,
} from './causes.ts'
import { faultSets } from './fault-sets.ts'

/** A fault of the engine, acting on all its cylinders or on the named ones. */
export type EngineFault = { cause: EngineCause | GroupCause; cylinders?: readonly number[] }

export type EngineSets = { sets: readonly (readonly EngineFault[])[]; prior: Float64Array; leftOut: number }

/** Faults of groups are taken one at a time and alone; their chance beside others counts as left out. */
export function engineSets(layout: Layout): EngineSets {
  const base = faultSets(engineCauseIds, id => engineCauses[id].prior)
  const grouped = groupCauseIds.flatMap(cause => {
    const groups = groupsOf(layout, groupCauses[cause].of)
    return groups.map(cylinders => ({
      fault: { cause, cylinders },
      chance: groupCauses[cause].prior / groups.length,
    }))
  })
  const anyGroup = grouped.reduce((sum, one) => sum + one.chance, 0)
  const alone = (base.prior[0] ?? 1) * anyGroup
  const sum = 1 - anyGroup + alone
  return {
    sets: [
      ...base.sets.map(set => set.map((cause): EngineFault => ({ cause }))),
      ...grouped.map(({ fault }): EngineFault[] => [fault]),
    ],
    prior: Float64Array.from([
      ...[...base.prior].map(chance => (chance * (1 - anyGroup)) / sum),
      ...grouped.map(({ chance }) => ((base.prior[0] ?? 1) * chance) / sum),
    ]),
    leftOut: base.leftOut + anyGroup * (1 - (base.prior[0] ?? 1)),
  }
}

function groupsOf(layout: Layout, of: 'companions' | 'firing neighbours' | 'bank'): number[][] {
  const cylinders = cylindersOf(layout)
  if (of === 'bank') return layout.banks.length > 1 ? layout.banks.map(bank => bank.cylinders) : []
  const other = of === 'companions' ? companion : firingSuccessor
  const pairs = cylinders.flatMap(cylinder => {
    const mate = other(layout, cylinder)
    return mate === null || mate === cylinder ? [] : [[cylinder, mate].sort((a, b) => a - b)]
  })
  return [...new Map(pairs.map(pair => [pair.join('-'), pair])).values()]
}

/** The causes of a set that act on one cylinder; without a cylinder, all of them. */
export const actingOn = (set: readonly EngineFault[], cylinder: number | undefined): CauseId[] =>
  set
    .filter(one => one.cylinders === undefined || cylinder === undefined || one.cylinders.includes(cylinder))
    .map(one => one.cause)

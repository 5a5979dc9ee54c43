// Checks evidence against a compiled network and puts it into the order of the network, so that the order in which it was
// given cannot matter, not even in the last digit.
import type { CompiledNetwork } from './compile.ts'
import type { Evidence } from './network.ts'
import { type Answer, failed, found } from './problem.ts'
import { largest } from './table-kernels.ts'

/** A likelihood and its largest entry, by which it is divided when it is used. */
export type Weighted = { values: ArrayLike<number>; most: number }

export type OrderedEvidence = {
  /** By variable number. */
  vectors: ReadonlyMap<number, Weighted>
  /** By slot name. */
  likelihoods: ReadonlyMap<string, Weighted>
  /** Logs of all `most`, together. */
  logScale: number
}

export function orderEvidence(compiled: CompiledNetwork, evidence: Evidence): Answer<OrderedEvidence> {
  const vectors = new Map<number, Weighted>()
  for (const [name, state] of Object.entries(evidence.observed ?? {})) {
    const number = compiled.numberOf.get(name)
    if (number === undefined) return failed('unknown variable', name, 'is observed but not in the network')
    const states = compiled.cards[number] ?? 1
    if (!Number.isInteger(state) || state < 0 || state >= states) {
      return failed('bad evidence', name, `state ${state} is not one of 0 to ${states - 1}`)
    }
    vectors.set(number, {
      values: Float64Array.from({ length: states }, (_, at) => (at === state ? 1 : 0)),
      most: 1,
    })
  }
  for (const [name, values] of Object.entries(evidence.soft ?? {})) {
    const number = compiled.numberOf.get(name)
    if (number === undefined) return failed('unknown variable', name, 'is weighed but not in the network')
    const checked = weigh(name, values, compiled.cards[number] ?? 1)
    if (!checked.ok) return checked
    const before = vectors.get(number)
    vectors.set(number, before ? both(before, checked.value) : checked.value)
  }
  const likelihoods = new Map<string, Weighted>()
  const given = evidence.likelihoods ?? {}
  const unknown = Object.keys(given).find(name => !compiled.slotNames.has(name))
  if (unknown !== undefined) return failed('unknown slot', unknown, 'is filled but not in the network')
  for (const plan of compiled.plans) {
    for (const { name, size } of plan.slots) {
      const values = given[name]
      if (!values) continue
      const checked = weigh(name, values, size)
      if (!checked.ok) return checked
      likelihoods.set(name, checked.value)
    }
  }
  let logScale = 0
  const logs = [...vectors].sort(([a], [b]) => a - b).map(([, { most }]) => Math.log(most))
  for (const log of [...logs, ...[...likelihoods.values()].map(({ most }) => Math.log(most))]) logScale += log
  return found({ vectors, likelihoods, logScale })
}

function weigh(name: string, values: ArrayLike<number>, size: number): Answer<Weighted> {
  if (values.length !== size) {
    return failed('bad evidence', name, `needs ${size} likelihoods, has ${values.length}`)
  }
  const most = largest(values)
  if (Number.isNaN(most)) {
    return failed('bad evidence', name, 'holds a likelihood that is negative or no number')
  }
  if (most === 0) return failed('impossible evidence', name, 'gives every state a likelihood of 0')
  return found({ values, most })
}

/** A variable both observed and weighed. The product may be 0 everywhere; propagation then finds it impossible. */
function both(one: Weighted, other: Weighted): Weighted {
  const values = Float64Array.from(one.values, (value, at) => value * (other.values[at] ?? 0))
  return { values, most: other.most }
}

// Checks evidence against a compiled network and puts it into the order of the network, so that the order in which it was
// given cannot matter, not even in the last digit.
import type { CompiledNetwork } from './compile.ts'
import type { Evidence } from './network.ts'
import { type Answer, failed, found } from './problem.ts'
import { isLikelihood, largest, multiplyInto, scaleAll } from './table-kernels.ts'

export type OrderedEvidence = {
  /** Likelihood of each state, largest 1, by variable number. */
  vectors: ReadonlyMap<number, Float64Array>
  /** As given, by slot name. */
  likelihoods: ReadonlyMap<string, Float64Array>
  /** Log of what the vectors were divided by. */
  logScale: number
}

export function orderEvidence(compiled: CompiledNetwork, evidence: Evidence): Answer<OrderedEvidence> {
  const { numberOf, cards } = compiled
  const vectors = new Map<number, Float64Array>()
  for (const [name, state] of Object.entries(evidence.observed ?? {})) {
    const number = numberOf.get(name)
    if (number === undefined) return failed('unknown variable', name, 'is observed but not in the network')
    const states = cards[number] ?? 1
    if (!Number.isInteger(state) || state < 0 || state >= states) {
      return failed('bad evidence', name, `state ${state} is not one of 0 to ${states - 1}`)
    }
    vectors.set(number, new Float64Array(states).fill(1, state, state + 1))
  }
  const logs: { number: number; log: number }[] = []
  for (const [name, given] of Object.entries(evidence.soft ?? {})) {
    const number = numberOf.get(name)
    if (number === undefined) return failed('unknown variable', name, 'is weighed but not in the network')
    const values = Float64Array.from(given)
    const fault = faultOf(name, values, cards[number] ?? 1)
    if (fault) return fault
    const most = largest(values)
    if (most === 0) return failed('impossible evidence', name, 'gives every state a likelihood of 0')
    scaleAll(values, 1 / most)
    logs.push({ number, log: Math.log(most) })
    const before = vectors.get(number)
    if (before) multiplyInto(values, before)
    vectors.set(number, values)
  }
  const likelihoods = new Map<string, Float64Array>()
  for (const [name, values] of Object.entries(evidence.likelihoods ?? {})) {
    const size = compiled.slotSizes.get(name)
    if (size === undefined) return failed('unknown slot', name, 'is filled but not in the network')
    const fault = faultOf(name, values, size)
    if (fault) return fault
    likelihoods.set(name, values)
  }
  // Summed in the order of the network, so that the last digit does not depend on the order of the keys.
  const logScale = logs.sort((a, b) => a.number - b.number).reduce((sum, { log }) => sum + log, 0)
  return found({ vectors, likelihoods, logScale })
}

function faultOf(name: string, values: Float64Array, size: number): ReturnType<typeof failed> | null {
  if (values.length !== size) {
    return failed('bad evidence', name, `needs ${size} likelihoods, has ${values.length}`)
  }
  if (isLikelihood(values)) return null
  return failed('bad evidence', name, 'holds a likelihood that is negative or no finite number')
}

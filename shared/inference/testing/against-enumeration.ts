// Compares a run with enumeration on one random network: the largest difference over everything that can be asked.
import { compileNetwork } from '../compile.ts'
import { allMarginals, joint } from '../posterior.ts'
import { propagate } from '../propagate.ts'
import { enumerate, tally } from './brute-force.ts'
import { randomEvidence, randomFrom, randomNetwork } from './random-network.ts'
import { valueOf } from './value-of.ts'

export type Comparison = { possible: boolean; agreeOnPossible: boolean; worst: number; worstLog: number }

/** One network and evidence from a seed: all marginals, one joint of up to three variables, log P(evidence). */
export function againstEnumeration(seed: number): Comparison {
  const random = randomFrom(seed)
  const network = randomNetwork(random)
  const evidence = randomEvidence(random, network)
  const names = network.variables.map(variable => variable.name)
  const all = enumerate(network, evidence)
  const total = all.reduce((sum, { weight }) => sum + weight, 0)
  const answer = propagate(valueOf(compileNetwork(network)), evidence)
  const possible = total > 0
  if (!possible || !answer.ok) {
    const said = !answer.ok && answer.problem.kind === 'impossible evidence'
    return { possible, agreeOnPossible: possible !== said, worst: 0, worstLog: 0 }
  }
  let worst = 0
  const compare = (ours: Float64Array, theirs: readonly number[]) => {
    if (ours.length !== theirs.length) worst = Number.POSITIVE_INFINITY
    theirs.forEach((value, at) => {
      const off = Math.abs(value - (ours[at] ?? Number.NaN))
      worst = Number.isNaN(off) ? Number.POSITIVE_INFINITY : Math.max(worst, off)
    })
  }
  const asked = names.filter(() => random() < 0.4).slice(0, 3)
  compare(valueOf(joint(answer.value, asked)), tally(network, all, asked))
  const marginals = valueOf(allMarginals(answer.value))
  for (const name of names) {
    compare(marginals.get(name) ?? new Float64Array(0), tally(network, all, [name]))
  }
  return {
    possible,
    agreeOnPossible: true,
    worst,
    worstLog: Math.abs(Math.log(total) - answer.value.logEvidence),
  }
}

// The chest clinic of Lauritzen & Spiegelhalter, J. R. Statist. Soc. B 50(2), 1988: every posterior, entropy, expected
// information and most probable explanation, recomputed exactly in data/asia-network.json. It has a deterministic table.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { compileNetwork } from '../../shared/inference/compile.ts'
import { expectedInformation } from '../../shared/inference/expected-information.ts'
import { mostProbableExplanation } from '../../shared/inference/explanation.ts'
import type { Network } from '../../shared/inference/network.ts'
import { allMarginals } from '../../shared/inference/posterior.ts'
import { propagate } from '../../shared/inference/propagate.ts'
import { valueOf } from '../../shared/inference/testing/value-of.ts'
import { published } from './published.ts'

const truths = z.record(z.string(), z.boolean())
const numbers = z.record(z.string(), z.number())
const data = published(
  'asia-network',
  z.object({
    variables: z.array(z.string()),
    parents: z.record(z.string(), z.array(z.string())),
    cpt_true: z.record(z.string(), z.union([z.number(), numbers, z.string()])),
    tolerance: z.number(),
    queries: z.array(
      z.object({
        evidence: truths,
        p_evidence: z.number(),
        posterior_true: numbers,
        entropy_bits: numbers,
      }),
    ),
    expected_information: z.array(
      z.object({
        evidence: truths,
        target: z.string(),
        test: z.string(),
        expected_information_bits: z.number(),
      }),
    ),
    most_probable_explanation: z.array(z.object({ evidence: truths, assignment: truths, joint: z.number() })),
  }),
)

/** The published table, states false and true; rows count through the parents with the last fastest. */
function tableOf(child: string) {
  const parents = data.parents[child] ?? []
  const given = data.cpt_true[child]
  const chances = Array.from({ length: 2 ** parents.length }, (_, row) => {
    const values = parents.map((_parent, at) => ((row >> (parents.length - 1 - at)) & 1) === 1)
    if (typeof given === 'number') return given
    if (typeof given === 'string') return values.some(Boolean) ? 1 : 0
    return given?.[parents.map((parent, at) => `${parent}=${values[at]}`).join(',')] ?? Number.NaN
  })
  return { child, parents, values: chances.flatMap(chance => [1 - chance, chance]) }
}

const network: Network = {
  variables: data.variables.map(name => ({ name, states: 2 })),
  tables: data.variables.map(tableOf),
}
const compiled = valueOf(compileNetwork(network))
const observed = (evidence: Record<string, boolean>) => ({
  observed: Object.fromEntries(Object.entries(evidence).map(([name, value]) => [name, value ? 1 : 0])),
})
const named = (evidence: Record<string, boolean>) => JSON.stringify(evidence)
/** The file prints its values with nine to twelve decimals. */
const printed = 1e-9

describe.each(data.queries.map(query => [named(query.evidence), query] as const))(
  'given %s',
  (_name, query) => {
    const posterior = valueOf(propagate(compiled, observed(query.evidence)))
    const marginals = valueOf(allMarginals(posterior))
    const of = (name: string) => marginals.get(name) ?? new Float64Array(0)

    it('the probability of the evidence', () => {
      expect(Math.abs(Math.exp(posterior.logEvidence) - query.p_evidence)).toBeLessThan(data.tolerance)
    })
    it.each(Object.entries(query.posterior_true))('P(%s)', (name, chance) => {
      expect(Math.abs((of(name)[1] ?? Number.NaN) - chance)).toBeLessThan(data.tolerance)
    })
    it.each(Object.entries(query.entropy_bits))('entropy of %s', (name, bits) => {
      const own = of(name).reduce((sum, value) => (value > 0 ? sum - value * Math.log2(value) : sum), 0)
      expect(Math.abs(own - bits)).toBeLessThan(printed)
    })
  },
)

it.each(data.expected_information.map(row => [row.test, row.target, named(row.evidence), row] as const))(
  'bits that %s tells of %s given %s',
  (_test, _target, _evidence, row) => {
    const posterior = valueOf(propagate(compiled, observed(row.evidence)))
    const bits = valueOf(expectedInformation(posterior, row.test, [row.target]))
    expect(Math.abs(bits - row.expected_information_bits)).toBeLessThan(printed)
  },
)

it.each(data.most_probable_explanation.map(row => [named(row.evidence), row] as const))(
  'the most probable explanation of %s',
  (_evidence, row) => {
    const { states, logProbability } = valueOf(mostProbableExplanation(compiled, observed(row.evidence)))
    expect(Object.fromEntries(states)).toEqual(observed(row.assignment).observed)
    expect(Math.abs(Math.exp(logProbability) - row.joint)).toBeLessThan(data.tolerance)
  },
)

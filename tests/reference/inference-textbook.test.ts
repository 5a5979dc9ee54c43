// Two networks of Russell & Norvig, "Artificial Intelligence: A Modern Approach", chapter on probabilistic reasoning: the
// sprinkler and the burglar alarm. Tables and printed results from memory; the book prints three or four decimals.
// The sprinkler's P(sprinkler | wet) and P(rain | wet) are those of Murphy's widely used tutorial on the same tables.
import { describe, expect, it } from 'vitest'
import { compileNetwork } from '../../shared/inference/compile.ts'
import { mostProbableExplanation } from '../../shared/inference/explanation.ts'
import type { Evidence, Network } from '../../shared/inference/network.ts'
import { marginal } from '../../shared/inference/posterior.ts'
import { propagate } from '../../shared/inference/propagate.ts'
import { valueOf } from '../../shared/inference/testing/value-of.ts'

const rows = (...chances: number[]) => chances.flatMap(chance => [1 - chance, chance])
const binary = (...names: string[]) => names.map(name => ({ name, states: 2 }))

const sprinkler: Network = {
  variables: binary('cloudy', 'sprinkler', 'rain', 'wet'),
  tables: [
    { child: 'cloudy', parents: [], values: rows(0.5) },
    { child: 'sprinkler', parents: ['cloudy'], values: rows(0.5, 0.1) },
    { child: 'rain', parents: ['cloudy'], values: rows(0.2, 0.8) },
    { child: 'wet', parents: ['sprinkler', 'rain'], values: rows(0, 0.9, 0.9, 0.99) },
  ],
}
const alarm: Network = {
  variables: binary('burglary', 'earthquake', 'alarm', 'john', 'mary'),
  tables: [
    { child: 'burglary', parents: [], values: rows(0.001) },
    { child: 'earthquake', parents: [], values: rows(0.002) },
    { child: 'alarm', parents: ['burglary', 'earthquake'], values: rows(0.001, 0.29, 0.94, 0.95) },
    { child: 'john', parents: ['alarm'], values: rows(0.05, 0.9) },
    { child: 'mary', parents: ['alarm'], values: rows(0.01, 0.7) },
  ],
}
const chance = (network: Network, variable: string, evidence: Evidence) =>
  valueOf(marginal(valueOf(propagate(valueOf(compileNetwork(network)), evidence)), variable))[1]
const probability = (network: Network, evidence: Evidence) =>
  Math.exp(valueOf(propagate(valueOf(compileNetwork(network)), evidence)).logEvidence)

describe('the sprinkler', () => {
  it('P(cloudy, no sprinkler, rain, wet) = 0.324', () => {
    const observed = { cloudy: 1, sprinkler: 0, rain: 1, wet: 1 }
    expect(probability(sprinkler, { observed })).toBeCloseTo(0.324, 12)
  })
  it('P(rain | sprinkler) = 0.3', () => {
    expect(chance(sprinkler, 'rain', { observed: { sprinkler: 1 } })).toBeCloseTo(0.3, 12)
  })
  it('P(rain | sprinkler, wet) = 0.0891 / 0.2781', () => {
    expect(chance(sprinkler, 'rain', { observed: { sprinkler: 1, wet: 1 } })).toBeCloseTo(0.0891 / 0.2781, 12)
  })
  it('P(wet) = 0.6471, P(sprinkler | wet) = 0.4298, P(rain | wet) = 0.7079', () => {
    expect(probability(sprinkler, { observed: { wet: 1 } })).toBeCloseTo(0.6471, 4)
    expect(chance(sprinkler, 'sprinkler', { observed: { wet: 1 } })).toBeCloseTo(0.4298, 4)
    expect(chance(sprinkler, 'rain', { observed: { wet: 1 } })).toBeCloseTo(0.7079, 4)
  })
})

describe('the burglar alarm', () => {
  it('P(no burglary, no earthquake, alarm, both call) = 0.000628', () => {
    const observed = { burglary: 0, earthquake: 0, alarm: 1, john: 1, mary: 1 }
    expect(probability(alarm, { observed })).toBeCloseTo(0.000628, 6)
  })
  it('P(burglary | both call) = 0.284', () => {
    expect(chance(alarm, 'burglary', { observed: { john: 1, mary: 1 } })).toBeCloseTo(0.284, 3)
  })
  it('the likeliest story of both calls is an alarm without burglary or earthquake', () => {
    const compiled = valueOf(compileNetwork(alarm))
    const { states } = valueOf(mostProbableExplanation(compiled, { observed: { john: 1, mary: 1 } }))
    // By hand: without an alarm 0.999 * 0.998 * 0.999 * 0.05 * 0.01 = 4.98e-4; with one 6.28e-4 (above).
    expect(Object.fromEntries(states)).toMatchObject({ burglary: 0, earthquake: 0, alarm: 1 })
  })
})

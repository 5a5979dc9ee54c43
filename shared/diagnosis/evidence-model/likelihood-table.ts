// The likelihood of one seen finding for every combination of the causes that three variables may bring to it.
import type { CauseId } from './causes.ts'
import type { Finding } from './finding.ts'
import { cumulative } from './outcome-chances.ts'

/**
 * Row by row over lists a, b, c, the last fastest. All values lie within a window as wide as the finding's most, so that no one
 * piece moves odds by more. The window holds the value of a sound engine, so that what fits one rare cause too well does not
 * push the other causes down among the sound.
 */
export function likelihoodTable(
  finding: Finding,
  weights: readonly number[],
  a: readonly (readonly CauseId[])[],
  b: readonly (readonly CauseId[])[],
  c: readonly (readonly CauseId[])[],
): Float64Array {
  const { partOf, together } =
    finding.kind === 'named' ? ofNamed(finding, weights) : ofOrdered(finding, weights)
  const [partsA, partsB, partsC] = [a.map(partOf), b.map(partOf), c.map(partOf)]
  const none = partOf([])
  const table = new Float64Array(a.length * b.length * c.length)
  let cell = 0
  for (const one of partsA)
    for (const two of partsB)
      for (const three of partsC) {
        table[cell] = together(one, two, three)
        cell += 1
      }
  const sound = together(none, none, none)
  const highest = table.reduce((most, one) => Math.max(most, one), 0)
  const lowest = table.reduce((least, one) => Math.min(least, one), highest)
  if (!(sound > 0 && highest > 0)) return table.fill(1)
  const least = Math.min(sound, Math.max(lowest, highest / finding.most))
  return table.map(one => Math.min(Math.max(one / least, 1), finding.most))
}

type Part = readonly number[]
type Way = {
  /** What the causes of one variable bring. */
  partOf: (causes: readonly CauseId[]) => Part
  together: (a: Part, b: Part, c: Part) => number
}

const weighed = (chances: readonly number[], weights: readonly number[]): number =>
  chances.reduce((sum, chance, at) => sum + chance * (weights[at] ?? 0), 0)

/** The mean of the effects: their sum and number. */
function ofNamed({ effects, sound }: Finding, weights: readonly number[]): Way {
  const without = weighed(sound.chances, weights)
  return {
    partOf: causes => {
      const shown = causes.flatMap(cause => effects[cause]?.chances ?? [])
      return [
        weighed(
          shown,
          causes.flatMap(cause => (effects[cause] ? weights : [])),
        ),
        causes.filter(cause => effects[cause]).length,
      ]
    },
    together: ([sumA = 0, countA = 0], [sumB = 0, countB = 0], [sumC = 0, countC = 0]) => {
      const count = countA + countB + countC
      return count === 0 ? without : (sumA + sumB + sumC) / count
    },
  }
}

/** The worst of the effects: products of their cumulative chances. */
function ofOrdered({ effects, sound, outcomes }: Finding, weights: readonly number[]): Way {
  const ofSound = cumulative(sound.chances)
  // Sum of w[k] (C[k] - C[k - 1]), gathered by C.
  const steps = outcomes.map((_, at) => ((weights[at] ?? 0) - (weights[at + 1] ?? 0)) * (ofSound[at] ?? 1))
  return {
    partOf: causes => {
      const shown = causes.flatMap(cause => (effects[cause] ? [cumulative(effects[cause].chances)] : []))
      return outcomes.map((_, at) => shown.reduce((product, one) => product * (one[at] ?? 1), 1))
    },
    together: (a, b, c) => {
      let sum = 0
      for (let at = 0; at < steps.length; at += 1)
        sum += (steps[at] as number) * (a[at] as number) * (b[at] as number) * (c[at] as number)
      return Math.max(sum, 0)
    },
  }
}

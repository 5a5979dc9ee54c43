// How likely each outcome of a finding is when certain causes are there.
import type { CauseId } from './causes.ts'
import type { Finding } from './finding.ts'

/** The causes of a list that act on this finding. */
export const thatShow = (finding: Finding, causes: readonly CauseId[]): CauseId[] =>
  causes.filter(cause => finding.effects[cause] !== undefined)

/**
 * Chances of the outcomes, in their order; they sum to 1. Ordered: the worst of independent effects and of what comes without
 * any (Diez & Galan 2003, from memory). Named: the mean of the effects.
 */
export function outcomeChances(finding: Finding, causes: readonly CauseId[]): number[] {
  const shown = causes.flatMap(cause => {
    const effect = finding.effects[cause]
    return effect ? [effect.chances] : []
  })
  if (shown.length === 0) return [...finding.sound.chances]
  if (finding.kind === 'named')
    return finding.outcomes.map((_, at) => shown.reduce((sum, one) => sum + (one[at] ?? 0), 0) / shown.length)
  const upTo = [finding.sound.chances, ...shown].map(cumulative)
  const together = finding.outcomes.map((_, at) => upTo.reduce((product, one) => product * (one[at] ?? 1), 1))
  return together.map((chance, at) => Math.max(0, chance - (together[at - 1] ?? 0)))
}

export function cumulative(chances: readonly number[]): number[] {
  let sum = 0
  return chances.map(one => (sum += one))
}

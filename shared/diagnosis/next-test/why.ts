// In plain words why a test is worth making: which two likely explanations its outcome tells apart best.
import type { Explanation, Fault } from './planning-view.ts'

/** How a cause is called in a sentence: "rings", "the head gasket". */
export type NameOf = (cause: string) => string

/**
 * "separates rings from valve on 3"; "shows whether coil on 3 is at fault" where the other side is a sound engine. `chances[e]`
 * are the outcome's chances under explanation e. Null where the test tells nothing apart.
 */
export function whyText(
  explanations: readonly Explanation[],
  chances: readonly (readonly number[])[],
  nameOf: NameOf,
): string | null {
  let best: readonly [Explanation, Explanation] | null = null
  let most = 1e-6
  for (const [at, one] of explanations.entries()) {
    for (const [other, two] of explanations.entries()) {
      if (other <= at) continue
      const apart = one.chance * two.chance * distance(chances[at] ?? [], chances[other] ?? [])
      if (apart <= most) continue
      most = apart
      best = [one, two]
    }
  }
  if (!best) return null
  const [one, two] = best
  if (one.faults.length === 0 || two.faults.length === 0) {
    return `shows whether ${listed([...one.faults, ...two.faults], nameOf)} is at fault`
  }
  return separates(one.faults, two.faults, nameOf)
}

function separates(one: readonly Fault[], two: readonly Fault[], nameOf: NameOf): string {
  const [first] = one
  const sameCylinder = [...one, ...two].every(({ cylinder }) => cylinder === first?.cylinder)
  if (!sameCylinder || first?.cylinder === undefined) {
    return `separates ${listed(one, nameOf)} from ${listed(two, nameOf)}`
  }
  const names = (faults: readonly Fault[]) => faults.map(({ cause }) => nameOf(cause)).join(' and ')
  return `separates ${names(one)} from ${names(two)} on ${first.cylinder}`
}

/** "rings on 3", "rings on 3 and vacuum leak". */
export const listed = (faults: readonly Fault[], nameOf: NameOf): string =>
  faults
    .map(({ cause, cylinder }) =>
      cylinder === undefined ? nameOf(cause) : `${nameOf(cause)} on ${cylinder}`,
    )
    .join(' and ')

/** Half the sum of differences: 0 same, 1 never the same outcome. */
const distance = (one: readonly number[], two: readonly number[]): number =>
  one.reduce((sum, chance, at) => sum + Math.abs(chance - (two[at] ?? 0)), 0) / 2

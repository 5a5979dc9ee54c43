// Finds the lowest point of a smooth function of a few numbers without its slopes: the simplex method of Nelder and
// Mead (Computer Journal 7, 1965), with the usual factors 1, 2, 1/2, 1/2.

type Corner<T> = { at: number[]; cost: number; found: T }

/**
 * @param begin where to start
 * @param steps first step along each number
 * @param judge cost at a point and what was found there; null where there is nothing
 * @returns everything found, in the order tried; empty where even the start gives nothing
 */
export function descend<T extends { cost: number }>(
  begin: number[],
  steps: number[],
  judge: (at: number[]) => T | null,
  rounds: number,
): T[] {
  const tried: T[] = []
  const visit = (at: number[]): Corner<T> | null => {
    const found = judge(at)
    if (!found) return null
    tried.push(found)
    return { at, cost: found.cost, found }
  }
  const corners = [
    begin,
    ...steps.map((step, place) => begin.map((one, at) => (at === place ? one + step : one))),
  ]
    .map(visit)
    .filter(corner => corner !== null)
  if (corners.length <= begin.length) return tried
  for (let round = 0; round < rounds; round += 1) {
    corners.sort((a, b) => a.cost - b.cost)
    const worst = corners.at(-1)
    const best = corners[0]
    const second = corners.at(-2)
    if (!worst || !best || !second || worst.cost - best.cost < 1e-3) break
    const middle = begin.map((_, at) => {
      return (
        corners.slice(0, -1).reduce((sum, corner) => sum + (corner.at[at] ?? 0), 0) / (corners.length - 1)
      )
    })
    const along = (share: number) => visit(middle.map((one, at) => one + share * ((worst.at[at] ?? 0) - one)))
    const turned = along(-1)
    if (turned && turned.cost < best.cost) {
      const further = along(-2)
      corners[corners.length - 1] = further && further.cost < turned.cost ? further : turned
    } else if (turned && turned.cost < second.cost) {
      corners[corners.length - 1] = turned
    } else {
      const nearer = along(turned && turned.cost < worst.cost ? -0.5 : 0.5)
      if (nearer && nearer.cost < Math.min(worst.cost, turned?.cost ?? worst.cost))
        corners[corners.length - 1] = nearer
      else {
        for (const [place, corner] of corners.entries()) {
          if (place === 0) continue
          const moved = visit(corner.at.map((one, at) => ((best.at[at] ?? 0) + one) / 2))
          if (moved) corners[place] = moved
        }
      }
    }
  }
  return tried
}

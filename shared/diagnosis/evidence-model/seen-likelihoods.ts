// The likelihood of what was seen, over the states of the variables it bears on. Many states act alike on one finding, so
// each finding is worked out once for each distinct set of acting causes and then looked up.
import type { CauseId } from './causes.ts'
import { neighbourGasket } from './causes.ts'
import type { CylinderPart, EngineModel } from './engine-model.ts'
import { actingOn } from './engine-sets.ts'
import { findingById } from './findings.ts'
import type { Finding } from './finding.ts'
import { likelihoodTable } from './likelihood-table.ts'
import { thatShow } from './outcome-chances.ts'
import type { Seen } from './seen.ts'

type Groups = { of: Uint16Array; lists: readonly (readonly CauseId[])[] }

/** States sorted by the causes in them that act on the finding. */
function grouped(finding: Finding, sets: readonly (readonly CauseId[])[]): Groups {
  const numbers = new Map<string, number>()
  const lists: CauseId[][] = []
  const of = Uint16Array.from(sets, set => {
    const acting = thatShow(finding, set)
    const key = acting.join('+')
    const known = numbers.get(key)
    if (known !== undefined) return known
    numbers.set(key, lists.length)
    lists.push(acting)
    return lists.length - 1
  })
  return { of, lists }
}

/** Likelihood over the engine's states of what was seen of the whole engine. */
export function engineLikelihood(model: EngineModel, seen: readonly Seen[]): Float64Array {
  const together = new Float64Array(model.engineSets.length).fill(1)
  const sets = model.engineSets.map(set => actingOn(set, undefined))
  for (const one of seen) {
    const finding = findingById(one.finding)
    if (!finding || one.cylinder !== undefined) continue
    const { of, lists } = grouped(finding, sets)
    const values = likelihoodTable(finding, one.weights, lists, [[]], [[]])
    for (let state = 0; state < together.length; state += 1)
      together[state] = (together[state] ?? 1) * (values[of[state] ?? 0] ?? 1)
  }
  return together
}

/** Multiplies what was seen on one cylinder into its slot: scope engine, webs, cylinder, the last fastest. */
export function multiplyCylinder(
  model: EngineModel,
  part: CylinderPart,
  seen: readonly Seen[],
  into: Float64Array,
): void {
  const engineLists = model.engineSets.map(set => actingOn(set, part.cylinder))
  const webStates = Array.from({ length: 2 ** part.webs.length }, (_, bits) => bits)
  const webLists = webStates.map((bits): CauseId[] =>
    part.webs.flatMap((_, at) => (((bits >> at) & 1) === 1 ? [neighbourGasket] : [])),
  )
  for (const one of seen) {
    const finding = findingById(one.finding)
    if (!finding || one.cylinder !== part.cylinder) continue
    const engine = grouped(finding, engineLists)
    const web = grouped(finding, webLists)
    const own = grouped(finding, model.cylinderSets)
    const values = likelihoodTable(finding, one.weights, engine.lists, web.lists, own.lists)
    const width = own.lists.length
    const states = own.of.length
    let cell = 0
    for (const engineGroup of engine.of)
      for (const webGroup of web.of) {
        const row = (engineGroup * web.lists.length + webGroup) * width
        for (let state = 0; state < states; state += 1, cell += 1)
          into[cell] = (into[cell] as number) * (values[row + (own.of[state] as number)] as number)
      }
  }
}

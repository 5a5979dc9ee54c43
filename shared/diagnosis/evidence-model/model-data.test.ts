import { expect, it } from 'vitest'
import { z } from 'zod'
import { builtInLayouts } from '../../engine/layouts.ts'
import { cylindersOf } from '../../engine/relations.ts'
import {
  type CauseId,
  cylinderCauseIds,
  cylinderCauses,
  engineCauseIds,
  engineCauses,
  groupCauses,
  pairCauses,
} from './causes.ts'
import { engineModel, faultsOf } from './engine-model.ts'
import { findings } from './findings.ts'
import { texts } from './sources.ts'

const causes = { ...cylinderCauses, ...engineCauses, ...groupCauses, ...pairCauses }
const causeIds = Object.keys(causes) as CauseId[]

const chance = z.number().gt(0).lt(1)
const provenance = z.union([
  z.enum(['common practice', 'judgement']),
  z.enum(Object.values(texts) as [string, ...string[]]),
])
const chancesOf = (outcomes: number) =>
  z.strictObject({
    chances: z
      .array(chance)
      .length(outcomes)
      .refine(all => Math.abs(all.reduce((sum, one) => sum + one, 0) - 1) < 1e-9, 'sums to 1'),
    source: provenance,
  })
const findingSchema = z.strictObject({
  id: z.string().min(3).max(60),
  of: z.enum(['cylinder', 'engine']),
  kind: z.enum(['ordered', 'named']),
  outcomes: z.array(z.string().min(1)).min(2),
  sound: z.unknown(),
  most: z.number().gt(1).max(100),
})

it.each(findings.map(one => [one.id, one] as const))(
  '%s: chances are chances, each with a source',
  (_, finding) => {
    const { effects, ...rest } = finding
    expect(() => findingSchema.parse(rest)).not.toThrow()
    const form = chancesOf(finding.outcomes.length)
    const wrong = [['sound', finding.sound] as const, ...Object.entries(effects)].filter(
      ([, one]) => !form.safeParse(one).success,
    )
    expect(wrong.map(([name]) => name)).toEqual([])
    expect(Object.keys(effects).filter(id => !(causeIds as string[]).includes(id))).toEqual([])
  },
)

it('names each finding and each cause once', () => {
  expect(new Set(findings.map(one => one.id)).size).toBe(findings.length)
  const all = [cylinderCauses, engineCauses, groupCauses, pairCauses].flatMap(Object.keys)
  expect(new Set(all).size).toBe(all.length)
})

it('every cause can be told by some finding, twofold or more on one of its outcomes', () => {
  const untold = causeIds.filter(
    cause =>
      !findings.some(({ effects, sound }) =>
        effects[cause]?.chances.some((one, at) => one / (sound.chances[at] ?? 1) >= 2),
      ),
  )
  expect(untold).toEqual([])
})

it('every finding tells of some cause', () => {
  const idle = findings.filter(({ effects, sound }) =>
    Object.values(effects).every(one => one.chances.every((each, at) => each === sound.chances[at])),
  )
  expect(idle.map(one => one.id)).toEqual([])
})

it('an engine finding tells only of what the engine has, not of one cylinder', () => {
  const ofOne = new Set<string>([...cylinderCauseIds, ...Object.keys(pairCauses)])
  const wrong = findings
    .filter(one => one.of === 'engine')
    .flatMap(one => Object.keys(one.effects).filter(cause => ofOne.has(cause)))
  expect(wrong).toEqual([])
})

it('ordered effects are never better than sound', () => {
  const wrong = findings
    .filter(one => one.kind === 'ordered')
    .flatMap(({ id, sound, effects }) =>
      Object.entries(effects).flatMap(([cause, { chances }]) => {
        let [ofSound, ofCause] = [0, 0]
        return chances.some((one, at) => {
          ofSound += sound.chances[at] ?? 0
          ofCause += one
          return ofCause > ofSound + 1e-9
        })
          ? [`${id}: ${cause}`]
          : []
      }),
    )
  expect(wrong).toEqual([])
})

it('a cause has a chance between 0 and 1, and "not modelled" has one everywhere', () => {
  for (const one of Object.values(causes)) expect(chance.safeParse(one.prior).success).toBe(true)
  expect(cylinderCauses['not modelled'].prior).toBeGreaterThan(0)
  expect(engineCauses['engine not modelled'].prior).toBeGreaterThan(0)
  expect(engineCauseIds).toContain('engine not modelled')
})

it('leaves out under a thousandth for every engine', () => {
  const layouts = builtInLayouts.filter(one => one.plugsPerCylinder === 1)
  expect(Math.max(...layouts.map(layout => engineModel(layout).leftOut))).toBeLessThan(0.001)
})

it('every fault of the causes is the state of some variable', () => {
  const vee = builtInLayouts.find(one => one.banks.length === 2 && cylindersOf(one).length === 8)
  if (!vee) throw new Error('no V8')
  const model = engineModel(vee)
  const reached = model.compiled.network.variables.flatMap(({ name, states }) =>
    Array.from({ length: states }, (_, state) => faultsOf(model, name, state)).flat(),
  )
  expect(new Set(reached.map(one => one.cause))).toEqual(new Set(causeIds))
})

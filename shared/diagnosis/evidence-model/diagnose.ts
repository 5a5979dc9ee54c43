// From a job to the chance of every cause, with what each test did to it. Exact for the model: no sampling, no cut-off but
// the bound on faults at once, whose share is reported.
import type { Job } from '../../job/job-schema.ts'
import type { Stage } from '../../job/tray-schema.ts'
import { type Posterior, propagate } from '../../inference/propagate.ts'
import { type Workspace, workspaceFor } from '../../inference/workspace.ts'
import type { Fault } from '../next-test/planning-view.ts'
import { causeShares, type Share } from './cause-shares.ts'
import { compressionSeen } from './compression-seen.ts'
import { cylinderSeen } from './cylinder-seen.ts'
import { type EngineModel, engineModel, engineVariable, faultsOf } from './engine-model.ts'
import { engineSeen } from './engine-seen.ts'
import { valueOrThrow } from './known-good.ts'
import { plugSeen } from './plug-seen.ts'
import { resistanceSeen } from './resistance-seen.ts'
import type { Seen } from './seen.ts'
import { engineLikelihood, multiplyCylinder } from './seen-likelihoods.ts'

export type CauseShare = {
  cause: string
  /** The cylinders that share it, for a fault between neighbours or of a group. */
  cylinders?: readonly number[]
  probability: number
  /** Before anything was seen. */
  before: number
  /**
   * Natural log of odds that each test added, over all cylinders it was made on. The log-odds of `before` and all weights add
   * up to the log-odds of `probability`. What a test adds depends on the others: the mean of adding it first to last and last
   * to first.
   */
  evidence: { from: Seen['from']; weight: number }[]
}

export type Diagnosis = {
  /** Causes of each cylinder, gaskets to its neighbours among them, likeliest first. */
  cylinders: { cylinder: number; causes: CauseShare[] }[]
  engine: { causes: CauseShare[] }
  /** Chance, before anything was seen, of more faults at once than are weighed. */
  leftOut: number
  posterior: Posterior
  faultsOf: (variable: string, state: number) => Fault[]
}

/** Everything that one stage of the job gives to go by. */
export const allSeen = (job: Job, stage: Stage): Seen[] => [
  ...compressionSeen(job, stage),
  ...cylinderSeen(job, stage),
  ...resistanceSeen(job, stage),
  ...plugSeen(job, stage),
  ...engineSeen(job, stage),
]

export function diagnose(job: Job, stage: Stage): Diagnosis {
  const model = engineModel(job.layout)
  const seen = allSeen(job, stage)
  const tests = [...new Set(seen.map(one => one.from))]
  // One workspace for both; the posterior of the run that comes last stays good.
  const work = workspaceFor(model.compiled)
  const backward = tests.length > 1 ? sharesAdding(model, seen, tests.toReversed(), work) : undefined
  const forward = sharesAdding(model, seen, tests, work)
  const before = forward.steps[0] ?? []
  const last = forward.steps.at(-1) ?? []
  const all = last.map((share, at): Share & CauseShare => ({
    ...share,
    probability: share.chance,
    before: before[at]?.chance ?? 0,
    evidence: tests
      .map((from, which) => {
        const turn = tests.length > 1 ? tests.length - 1 - which : which
        return {
          from,
          weight: (stepAt(forward.steps, which, at) + stepAt((backward ?? forward).steps, turn, at)) / 2,
        }
      })
      .toSorted((a, b) => Math.abs(b.weight) - Math.abs(a.weight)),
  }))
  const causesOf = (belongs: (share: Share) => boolean): CauseShare[] =>
    all
      .filter(belongs)
      .map(({ cause, cylinders, probability, before, evidence }) => ({
        cause,
        ...(cylinders ? { cylinders } : {}),
        probability,
        before,
        evidence,
      }))
      .toSorted((a, b) => b.probability - a.probability)
  const webs = new Set<unknown>(model.webs.map(web => web.between))
  return {
    cylinders: model.cylinders
      .map(({ cylinder }) => ({
        cylinder,
        causes: causesOf(
          share =>
            share.cylinder === cylinder ||
            (webs.has(share.cylinders) && share.cylinders?.includes(cylinder) === true),
        ),
      }))
      .toSorted((a, b) => a.cylinder - b.cylinder),
    engine: { causes: causesOf(share => share.cylinder === undefined && !webs.has(share.cylinders)) },
    leftOut: model.leftOut,
    posterior: forward.posterior,
    faultsOf: (variable, state) => faultsOf(model, variable, state),
  }
}

const logOdds = (chance: number): number => Math.log(chance) - Math.log1p(-chance)

const stepAt = (steps: readonly (readonly Share[])[], step: number, at: number): number =>
  logOdds(steps[step + 1]?.[at]?.chance ?? 0.5) - logOdds(steps[step]?.[at]?.chance ?? 0.5)

/** Shares before anything is seen, then after each test is added to those before it. */
function sharesAdding(
  model: EngineModel,
  seen: readonly Seen[],
  tests: readonly Seen['from'][],
  work: Workspace,
) {
  const slots = new Map<string, Float64Array>()
  const added: Seen[] = []
  const run = () =>
    valueOrThrow(
      propagate(
        model.compiled,
        {
          soft: { [engineVariable]: engineLikelihood(model, added) },
          likelihoods: Object.fromEntries(slots),
        },
        work,
      ),
    )
  let posterior = run()
  const steps = [causeShares(model, posterior)]
  for (const test of tests) {
    const now = seen.filter(one => one.from === test)
    added.push(...now)
    for (const part of model.cylinders) {
      if (!now.some(one => one.cylinder === part.cylinder)) continue
      const cells = model.engineSets.length * 2 ** part.webs.length * model.cylinderSets.length
      const slot = slots.get(part.slot) ?? new Float64Array(cells).fill(1)
      slots.set(part.slot, slot)
      multiplyCylinder(model, part, now, slot)
    }
    posterior = run()
    steps.push(causeShares(model, posterior))
  }
  return { steps, posterior }
}

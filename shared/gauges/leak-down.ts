// Leak-down: how much of the air put into one cylinder is lost, held against the specification or the chosen rule set,
// and where it goes.
import { cylindersOf } from '../engine/relations.ts'
import { conditionsOf } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMaximum, settle } from './calling.ts'
import { escapeWords, shouldBeTight } from './leak-down-paths.ts'
import { alikeTested, leakDownReadings } from './leak-down-readings.ts'
import { type LeakDownValue, leakDownValues } from './leak-down-values.ts'
import { ruleSet } from './rule-sets.ts'
import { percentWords, round } from './shown.ts'
import { sources } from './sources.ts'
import { byCylinder, type CylinderVerdict, type Verdict } from './verdict.ts'

type Measured = LeakDownValue & { percent: number }
const isMeasured = (one: LeakDownValue): one is Measured => one.percent !== undefined

/** All verdicts that the leak-down pulls of one stage allow, by cylinder. */
export function judgeLeakDown(job: Job, stage: Stage): CylinderVerdict[] {
  const here = new Set(cylindersOf(job.layout))
  const values = leakDownValues(job, stage).filter(one => here.has(one.cylinder))
  return [
    ...values.filter(isMeasured).map(one => leakage(one, job, stage)),
    ...alikeTested(values).flatMap(group => apart(group.filter(isMeasured), job, stage)),
    ...values.flatMap(one => asHole(one, stage)),
    ...values.filter(one => one.escapes.length > 0).map(one => escape(one, stage)),
    ...leakDownReadings(values, conditionsOf(job, 'leak-down', stage), stage),
  ].toSorted(byCylinder)
}

function leakage(one: Measured, job: Job, stage: Stage): CylinderVerdict {
  const rules = ruleSet('leakDown', job)
  const typed = job.circumstances.specification?.leakDownMaximum
  const maximum = typed ?? rules.maximumPercent
  const normal = typed === undefined ? rules.normalPercent : undefined
  const call = againstMaximum(one.percent, one.plusMinus, maximum)
  const adapter = one.escapes.includes('plug adapter')
  const aboveNormal =
    call === 'within' &&
    normal !== undefined &&
    againstMaximum(one.percent, one.plusMinus, normal) === 'outside'
  const verdict: Verdict = adapter && call === 'outside' ? 'cannot be called' : aboveNormal ? 'watch' : call
  return {
    test: 'leak-down',
    rule: 'leakage',
    cylinder: one.cylinder,
    stage,
    value: round(one.percent, 2),
    plusMinus: round(one.plusMinus),
    unit: '%',
    verdict,
    limit: `at most ${percentWords(maximum)}${normal === undefined ? '' : `, normal up to ${percentWords(normal)}`}`,
    why: `${why(one, verdict, adapter)}${verdict === call ? settle(verdict) : ''}`,
    source: typed === undefined ? rules.source : sources.typed,
  }
}

function why(one: Measured, verdict: Verdict, adapter: boolean): string {
  const lost = `${round(one.percent, 2)} % lost${one.pulls > 1 ? ` (middle of ${one.pulls})` : ''}.`
  if (adapter) return `${lost} Air escapes at the plug adapter, so the cylinder is better than this.`
  if (verdict === 'watch') return `${lost} More than normal, not over the limit.`
  return verdict === 'outside' && one.twoGauges
    ? `${lost} Run the engine at least 3 minutes and test again hot before condemning (FAA AC 43.13-1B).`
    : lost
}

/** A typed maximum takes the place of this; points apart only warn, since both may be well within the limit. */
function apart(group: readonly Measured[], job: Job, stage: Stage): CylinderVerdict[] {
  const { apartPoints, source } = ruleSet('leakDown', job)
  const best = group.toSorted((a, b) => a.percent - b.percent || a.cylinder - b.cylinder)[0]
  if (
    best === undefined ||
    group.length < 2 ||
    apartPoints === undefined ||
    job.circumstances.specification?.leakDownMaximum !== undefined
  )
    return []
  return group.map(one => {
    const above = one.percent - best.percent
    const plusMinus = one === best ? 0 : Math.hypot(one.plusMinus, best.plusMinus)
    const call = againstMaximum(above, plusMinus, apartPoints)
    return {
      test: 'leak-down',
      rule: 'above the tightest',
      cylinder: one.cylinder,
      stage,
      value: round(above, 2),
      plusMinus: round(plusMinus),
      unit: 'points',
      verdict: call === 'outside' ? 'watch' : call,
      limit: `at most ${apartPoints} points above the tightest cylinder`,
      why:
        one === best
          ? `The tightest: ${round(one.percent, 2)} % lost.`
          : `${round(one.percent, 2)} % against ${round(best.percent, 2)} % in cylinder ${best.cylinder}.${settle(call)}`,
      source,
    }
  })
}

function escape(one: LeakDownValue, stage: Stage): CylinderVerdict {
  const tight = one.escapes.filter(shouldBeTight)
  return {
    test: 'leak-down',
    rule: 'where it escapes',
    cylinder: one.cylinder,
    stage,
    value: tight.length,
    unit: tight.length === 1 ? 'path that should be tight' : 'paths that should be tight',
    verdict: tight.length > 0 ? 'watch' : 'noted',
    limit: 'valves, gasket and head hold air; rings lose a little',
    why: escapeWords(one.escapes, one.towards),
    source: sources.leakPaths,
  }
}

/** Only noted: what a hole of that size means depends on the engine, but it can be put beside another tester's. */
function asHole({ cylinder, hole }: LeakDownValue, stage: Stage): CylinderVerdict[] {
  if (hole === undefined) return []
  return [
    {
      test: 'leak-down',
      rule: 'as a hole',
      cylinder,
      stage,
      value: round(hole, 2),
      unit: 'mm',
      verdict: 'noted',
      limit: 'no limit: an estimate that does not hang on the orifice of the tester',
      why: `It leaks about as much as a round hole of ${round(hole, 2)} mm.`,
      source: sources.hole,
    },
  ]
}

// All rule sets of a kind side by side, where they call a cylinder or the engine differently: the page shows that the
// published limits contradict, and what each would say.
import type { Job } from '../job/job-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { gauges } from './gauges.ts'
import { type RuleKind, ruleSet, ruleSets } from './rule-sets.ts'
import { type ShownUnits, tradeUnits } from './shown.ts'
import type { GaugeVerdict, Verdict } from './verdict.ts'

export type SetCall = { id: string; title: string; source: string; verdict: Verdict; limit: string }

export type DifferingCalls = {
  kind: RuleKind
  test: TestKind
  /** Absent for the whole engine. */
  cylinder?: number
  /** What this rule kind is called for the reader, e.g. "spread". */
  subject: string
  /** Id of the set that the job is judged by. */
  chosen: string
  /** In the order of the sets; a set that says nothing here is left out. */
  calls: SetCall[]
}

const testOf: Readonly<Record<RuleKind, { test: TestKind; subject: string }>> = {
  compressionSpread: { test: 'compression', subject: 'spread' },
  compressionShare: { test: 'compression', subject: 'share' },
  leakDown: { test: 'leak-down', subject: 'leakage' },
  idleVacuum: { test: 'vacuum', subject: 'idle vacuum' },
  crankingVacuum: { test: 'vacuum', subject: 'cranking vacuum' },
  trims: { test: 'trims', subject: 'fuel trims' },
  injectorBalance: { test: 'injector balance', subject: 'injector balance' },
}

const kinds = Object.keys(testOf).filter((key): key is RuleKind => key in ruleSets)

/** The worse first: of several rules in one set the worst call stands for the set. */
const order: readonly Verdict[] = ['outside', 'watch', 'cannot be called', 'within', 'noted']
const worst = (a: GaugeVerdict, b: GaugeVerdict): number =>
  order.indexOf(a.verdict) - order.indexOf(b.verdict)

/** What each set says where they differ; nothing where a typed specification decides. */
export function differingCalls(job: Job, stage: Stage, units: ShownUnits = tradeUnits): DifferingCalls[] {
  return kinds.flatMap(kind => ofKind(kind, job, stage, units))
}

function ofKind(kind: RuleKind, job: Job, stage: Stage, units: ShownUnits): DifferingCalls[] {
  const { test, subject } = testOf[kind]
  const gauge = gauges.find(one => one.test === test)
  if (gauge === undefined) return []
  const judged = ruleSets[kind].map(({ id, title, source }) => {
    const all = gauge.judge(withSet(job, kind, id), stage, units)
    const verdicts = all.filter(
      one => one.source.includes(source) && one.about !== 'reading' && one.verdict !== 'noted',
    )
    return { id, title, source, verdicts, all: new Set(all.map(keyOf)) }
  })
  // What no set changes comes from another rule of the same source.
  const steady = new Set([...(judged[0]?.all ?? [])].filter(key => judged.every(({ all }) => all.has(key))))
  const affected = judged.map(({ id, title, source, verdicts }) => ({
    set: { id, title, source },
    verdicts: verdicts.filter(one => !steady.has(keyOf(one))),
  }))
  const places = new Set(affected.flatMap(one => one.verdicts.map(one => one.cylinder)))
  return [...places].flatMap(cylinder => {
    const calls = affected.flatMap(({ verdicts, set }): SetCall[] => {
      const first = verdicts.filter(one => one.cylinder === cylinder).toSorted(worst)[0]
      return first === undefined ? [] : [{ ...set, verdict: first.verdict, limit: first.limit }]
    })
    return new Set(calls.map(one => one.verdict)).size < 2
      ? []
      : [
          {
            kind,
            test,
            ...(cylinder === undefined ? {} : { cylinder }),
            subject,
            chosen: ruleSet(kind, job).id,
            calls,
          },
        ]
  })
}

const withSet = (job: Job, kind: RuleKind, id: string): Job => ({
  ...job,
  circumstances: { ...job.circumstances, rules: { ...job.circumstances.rules, [kind]: id } },
})

const keyOf = ({ rule, cylinder, limit, verdict }: GaugeVerdict): string =>
  JSON.stringify([rule, cylinder, limit, verdict])

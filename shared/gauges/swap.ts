// Swap tests: what was moved from where to where, and what that proves of the part, by the cylinder it came from.
import { companion, cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { Gauge } from './gauge.ts'
import { afterWork } from './swap-after.ts'
import { type Conclusion, conclude } from './swap-conclusion.ts'
import type { SwapEntry } from './swap-entry.ts'
import { byCylinder, type CylinderVerdict } from './verdict.ts'

type Concluded = { cylinder: number; rule: string; result: SwapEntry['result']; said: Conclusion }

/** The verdict is on the part that came from the cylinder; swaps alike are taken together. */
export function judgeSwap(job: Job, stage: Stage): CylinderVerdict[] {
  const now = swapsOf(job, stage)
  const keys = new Set(now.map(keyOf))
  const proven =
    stage === 'after repair'
      ? swapsOf(job, 'as found').filter(
          one => (one.verdict === 'outside' || one.verdict === 'watch') && !keys.has(keyOf(one)),
        )
      : []
  return [...now, ...proven.flatMap(one => afterWork(one, job))].toSorted(
    (a, b) => byCylinder(a, b) || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
  )
}

const keyOf = ({ cylinder, rule }: { cylinder: number; rule: string }): string => `${cylinder} ${rule}`

function swapsOf(job: Job, stage: Stage): CylinderVerdict[] {
  const here = new Set(cylindersOf(job.layout))
  const groups = new Map<string, Concluded[]>()
  for (const { entry } of validPulls(job, 'swap', stage)) {
    if (!here.has(entry.from) || (entry.to !== undefined && !here.has(entry.to))) continue
    for (const said of conclude(entry, companion(job.layout, entry.from))) {
      const rule = entry.to === undefined ? `known-good ${said.part}` : `${said.part} to cylinder ${entry.to}`
      const one = { cylinder: entry.from, rule, result: entry.result, said }
      groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one])
    }
  }
  return [...groups.values()].flatMap(group => together(group, stage))
}

const tellingFirst: readonly Conclusion['verdict'][] = ['outside', 'within', 'watch', 'cannot be called']

/** Of several swaps alike the most telling counts; proven and cleared at once contradict each other. */
function together(group: readonly Concluded[], stage: Stage): CylinderVerdict[] {
  const [telling] = group.toSorted(
    (a, b) =>
      tellingFirst.indexOf(a.said.verdict) - tellingFirst.indexOf(b.said.verdict) ||
      (a.said.why < b.said.why ? -1 : a.said.why > b.said.why ? 1 : 0),
  )
  if (telling === undefined) return []
  const verdicts = new Set(group.map(one => one.said.verdict))
  const contradict = verdicts.has('within') && (verdicts.has('outside') || verdicts.has('watch'))
  const { part: _part, ...said } = telling.said
  return [
    {
      test: 'swap',
      rule: telling.rule,
      cylinder: telling.cylinder,
      stage,
      value: group.length,
      unit: group.length === 1 ? 'swap' : 'swaps',
      limit: 'followed the part: proven; stayed: cleared',
      source: 'common practice',
      ...said,
      ...(contradict
        ? {
            verdict: 'cannot be called' as const,
            why: 'Swaps alike contradict each other: it followed the part once and stayed once. The fault comes and goes, or a joint was disturbed. Repeat.',
          }
        : {}),
    },
  ]
}

export const swapGauge: Gauge = {
  test: 'swap',
  title: 'Swap',
  cautions: [
    'Key off, engine stopped before any part is moved; never a live lead by hand: coils reach 30 to 50 kV.',
    'A pacemaker wearer stays away from running ignition. No lead left open: the coil climbs to its maximum.',
    'Injectors: relieve the fuel pressure first, towel over the fitting, ventilate, no flame or spark near.',
    'A plug and a manifold that just ran burn; torque the plug by the service information.',
  ],
  steps: [
    'Note both cylinders and clear the counters first.',
    'Move one part only, to a cylinder that works; not to the companion where one coil serves both.',
    'Run it under the conditions of the complaint until the fault shows: not coming back proves nothing.',
    'Followed the part: proven. Stayed: cleared. Then put everything back, or fit the new part, and test again.',
  ],
  judge: judgeSwap,
}

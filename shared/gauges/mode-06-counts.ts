// The misfire counters of service 06, cylinder beside cylinder, and what the average over the drives still remembers.
import type { Stage } from '../job/tray-schema.ts'
import { cleanCycles, nextAverage } from './misfire-average.ts'
import { callCounts } from './misfire-compare.ts'
import type { MonitorTest } from './mode-06-decode.ts'
import { averageTest, misfireCylinder, thisDriveTest } from './mode-06-monitors.ts'
import { round } from './shown.ts'
import type { Verdict } from './verdict.ts'

export type CountCall = { verdict: Verdict; why: string }

type Counter = { cylinder: number; test: MonitorTest }

/** Calls for every counter with open limits that has run, each held against the same counter of the same module. */
export function callCounters(
  tests: readonly MonitorTest[],
  cylinders: ReadonlySet<number>,
  stage: Stage,
): Map<MonitorTest, CountCall> {
  const groups = new Map<string, Counter[]>()
  for (const test of tests) {
    const cylinder = misfireCylinder(test.mid)
    if (cylinder === null || !cylinders.has(cylinder) || !isCounter(test)) continue
    const key = groupKey(test.tid, test.from)
    groups.set(key, [...(groups.get(key) ?? []), { cylinder, test }])
  }
  const calls = new Map<MonitorTest, CountCall>()
  for (const group of groups.values()) {
    const called = callCounts(group.map(({ cylinder, test }) => ({ cylinder, count: test.value })))
    for (const { cylinder, verdict, why } of called) {
      const test = group.find(one => one.cylinder === cylinder)?.test
      if (test === undefined) continue
      const thisDrive = groups
        .get(groupKey(thisDriveTest, test.from))
        ?.find(one => one.cylinder === cylinder)?.test
      calls.set(test, remembering({ verdict, why }, test, thisDrive, stage))
    }
  }
  return calls
}

const groupKey = (tid: number, from: string | undefined): string => `${tid} ${from ?? ''}`

const isCounter = ({ open, unit, state }: MonitorTest): boolean =>
  open && unit === 'counts' && state !== 'not run'

/** An average outlives the fault by many drives: with nothing in this drive it is history, and no fault after a repair. */
function remembering(
  call: CountCall,
  { tid, value }: MonitorTest,
  thisDrive: MonitorTest | undefined,
  stage: Stage,
): CountCall {
  const prove =
    call.verdict === 'outside'
      ? ' On some makes the numbers follow the firing order: prove once by unplugging an injector.'
      : ''
  if (tid !== averageTest || value === 0) return { ...call, why: `${call.why}${prove}` }
  const fades = ` One clean drive takes it to ${round(nextAverage(value, 0))}, ${cleanCycles(value)} to nought.`
  if (thisDrive?.value !== 0) return { ...call, why: `${call.why}${prove}${fades}` }
  const history: Verdict = stage === 'after repair' ? 'noted' : 'watch'
  return {
    verdict: call.verdict === 'outside' || call.verdict === 'watch' ? history : call.verdict,
    why: `An average of ${round(value)} and none in this drive: this is history.${fades}`,
  }
}

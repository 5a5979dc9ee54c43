// What the tests of the whole engine say: vacuum, fuel, trims, what was noticed and how tests were set up.
import { inPsi } from '../../gauges/compression-values.ts'
import { needleBehaviours } from '../../gauges/vacuum-entry.ts'
import { idleExpectation } from '../../gauges/vacuum-expectation.ts'
import { phaseValue, possiblePulls, valueOf } from '../../gauges/vacuum-values.ts'
import { conditionsOf, validPulls } from '../../job/current.ts'
import type { Job } from '../../job/job-schema.ts'
import type { Stage } from '../../job/tray-schema.ts'
import { median } from '../../gauges/middle.ts'
import { findingById } from './findings.ts'
import { named, type Seen, spans, sure } from './seen.ts'

export const engineSeen = (job: Job, stage: Stage): Seen[] => [
  ...vacuumSeen(job, stage),
  ...fuelSeen(job, stage),
  ...setUpSeen(job, stage),
  ...noticedSeen(job, stage),
]

function vacuumSeen(job: Job, stage: Stage): Seen[] {
  const from = 'vacuum' as const
  const seen: Seen[] = []
  const idle = phaseValue(job, stage, 'idle')
  if (idle) {
    const { low } = idleExpectation(job)
    const weights = spans(low - idle.value, Math.max(idle.plusMinus, 0.5), [1, 5])
    seen.push({ finding: 'idle vacuum', from, weights })
  }
  const needle = possiblePulls(job, stage, 'idle').findLast(pull => pull.entry.needle !== undefined)?.entry
    .needle
  if (needle) seen.push({ finding: 'needle at idle', from, weights: named(needleBehaviours, needle) })
  const trend = possiblePulls(job, stage, '2500 rpm').findLast(pull => pull.entry.trend !== undefined)?.entry
    .trend
  if (trend) {
    const at = trend === 'falls toward zero' ? 2 : trend === 'falls slowly' ? 1 : 0
    seen.push({ finding: 'vacuum while 2500 rpm is held', from, weights: sure(at, 3) })
  }
  const rebound = valueOf(job, possiblePulls(job, stage, 'snap'), entry => entry.rebound)
  if (rebound && idle)
    seen.push({
      finding: 'rebound after a snap',
      from,
      weights: spans(idle.value + 1 - rebound.value, Math.hypot(rebound.plusMinus, idle.plusMinus, 0.3), [0]),
    })
  return seen
}

/** Percent either way; published concern starts between 8 and 15. */
const trimLimit = 10

function fuelSeen(job: Job, stage: Stage): Seen[] {
  const trims = validPulls(job, 'trims', stage).filter(({ entry }) => entry.closedLoop !== false)
  const states = [
    ['idle', 'trim at idle'],
    ['2500 rpm', 'trim at 2500 rpm'],
  ] as const
  const seen: Seen[] = states.flatMap(([state, finding]): Seen[] => {
    const totals = trims
      .filter(({ entry }) => entry.state === state)
      .map(({ entry }) => (entry.shortTerm ?? 0) + (entry.longTerm ?? 0))
    if (totals.length === 0) return []
    return [{ finding, from: 'trims', weights: spans(median(totals), 2.5, [-trimLimit, trimLimit]) }]
  })
  const { fuelPressureMinimum: least, fuelPressureMaximum: most } = job.circumstances.specification ?? {}
  const running = validPulls(job, 'fuel pressure', stage).filter(
    ({ entry }) => entry.state !== 'after stopping',
  )
  if (running.length > 0 && least && most && inPsi(most) > inPsi(least)) {
    const values = running.map(({ entry }) => inPsi(entry.pressure))
    // Pressure that drops only under load is what tells, so the lowest counts where it is under the limit.
    const value = Math.min(...values) < inPsi(least) ? Math.min(...values) : median(values)
    seen.push({
      finding: 'fuel pressure',
      from: 'fuel pressure',
      weights: spans(value, 1, [inPsi(least), inPsi(most)]),
    })
  }
  return seen
}

/** Volts under which a starter turns too slowly: common practice. */
const leastVolts = 9.6

function setUpSeen(job: Job, stage: Stage): Seen[] {
  const cranking = conditionsOf(job, 'compression', stage)
  const pulls = validPulls(job, 'compression', stage)
  const from = 'compression' as const
  const volts = pulls.flatMap(({ entry }) => entry.batteryVolts ?? [])
  const seen: Seen[] = []
  if (volts.length > 0)
    seen.push({
      finding: 'battery low while cranking',
      from,
      weights: spans(leastVolts - Math.min(...volts), 0.3, [0]),
    })
  if (cranking.throttle !== undefined)
    seen.push({
      finding: 'throttle closed while cranking',
      from,
      weights: sure(cranking.throttle === 'closed' ? 1 : 0, 2),
    })
  if (cranking.engine !== undefined)
    seen.push({ finding: 'engine cold', from, weights: sure(cranking.engine === 'cold' ? 1 : 0, 2) })
  const idle = conditionsOf(job, 'balance', stage).idleControl
  if (idle !== undefined)
    seen.push({
      finding: 'idle control active',
      from: 'balance',
      weights: sure(idle === 'active' ? 1 : 0, 2),
    })
  return seen
}

/** The last answer to each question counts. */
function noticedSeen(job: Job, stage: Stage): Seen[] {
  const answers = new Map(
    validPulls(job, 'observation', stage).map(({ entry }) => [entry.seen, entry.answer] as const),
  )
  return [...answers].flatMap(([seen, answer]): Seen[] => {
    const finding = `noticed: ${seen}`
    return findingById(finding)
      ? [{ finding, from: 'observation', weights: sure(answer === 'yes' ? 1 : 0, 2) }]
      : []
  })
}

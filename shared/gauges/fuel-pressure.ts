// Rail pressure in each state against a typed range and from state to state, and how it holds.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMaximum, againstMinimum, type Call, settle } from './calling.ts'
import type { FuelPressureEntry } from './fuel-entries.ts'
import { type Held, judgeHold } from './fuel-hold.ts'
import { differenceInterval, fuelPsi, readingInterval } from './fuel-reading.ts'
import type { Gauge } from './gauge.ts'
import { median, rangeOf, tidy } from './middle.ts'
import { pressureShown, pressureWords, type ShownUnits, tradeUnits } from './shown.ts'
import { sources } from './sources.ts'
import type { GaugeVerdict } from './verdict.ts'

type RunState = Exclude<FuelPressureEntry['state'], 'after stopping'>
const runStates: readonly RunState[] = ['key on', 'idle', '2500 rpm', 'load']

/** Middle of the readings of one state, psi; `difference` is the half width of a difference to another state. */
type AtState = { state: RunState; psi: number; plusMinus: number; difference: number }

const stateWords: Readonly<Record<RunState, string>> = {
  'key on': 'key on',
  idle: 'at idle',
  '2500 rpm': 'at 2500 rpm',
  load: 'under load',
}

type Setting = { stage: Stage; units: ShownUnits; job: Job }

/** Verdicts on the engine, none on a cylinder: the rail is one. */
export function judgeFuelPressure(job: Job, stage: Stage, units: ShownUnits = tradeUnits): GaugeVerdict[] {
  const setting = { stage, units, job }
  const states = runStates.flatMap(state => atState(state, setting))
  const { held, start } = afterStopping(states, setting)
  const specification = job.circumstances.specification
  return [
    ...states.map(one => againstRange(one, states, setting)),
    ...underLoad(states, setting),
    ...judgeHold(held, start, { stage, units, specification }),
  ]
}

function atState(state: RunState, { job, stage }: Setting): AtState[] {
  const pulls = validPulls(job, 'fuel pressure', stage).filter(pull => pull.entry.state === state)
  if (pulls.length === 0) return []
  const values = pulls.map(pull => fuelPsi(pull.entry.pressure))
  const widest = (of: typeof readingInterval) => Math.max(...pulls.map(pull => of(job, pull.instrument)))
  return [
    {
      state,
      psi: median(values),
      plusMinus: Math.max(widest(readingInterval), rangeOf(values) / 2),
      difference: Math.max(widest(differenceInterval), rangeOf(values) / 2),
    },
  ]
}

/** Falls start from a reading at nought minutes, else from key on, else from idle. */
function afterStopping(
  states: readonly AtState[],
  { job, stage }: Setting,
): { held: Held[]; start: number | undefined } {
  const pulls = validPulls(job, 'fuel pressure', stage).filter(pull => pull.entry.state === 'after stopping')
  const minutes = [...new Set(pulls.flatMap(({ entry }) => entry.minutes ?? []))].toSorted((a, b) => a - b)
  const held = minutes.map(minute => {
    const of = pulls.filter(pull => pull.entry.minutes === minute)
    return {
      minutes: minute,
      psi: median(of.map(pull => fuelPsi(pull.entry.pressure))),
      plusMinus: Math.max(...of.map(pull => differenceInterval(job, pull.instrument))),
    }
  })
  const start =
    held.find(one => one.minutes === 0)?.psi ??
    states.find(one => one.state === 'key on')?.psi ??
    states.find(one => one.state === 'idle')?.psi
  return { held, start }
}

function againstRange(
  one: AtState,
  states: readonly AtState[],
  { job, stage, units }: Setting,
): GaugeVerdict {
  const words = (psi: number) => pressureWords(psi, units)
  const specification = job.circumstances.specification
  const minimum = specification?.fuelPressureMinimum
  const maximum = specification?.fuelPressureMaximum
  const base = {
    test: 'fuel pressure',
    rule: stateWords[one.state],
    stage,
    ...pressureShown(one.psi, units),
    plusMinus: pressureShown(one.plusMinus, units).value,
  } as const
  if (minimum === undefined && maximum === undefined)
    return {
      ...base,
      verdict: 'noted',
      limit: 'the service information; none is typed',
      why: `${words(one.psi)}.${states.some(other => other.state === 'load') ? '' : ' In order at idle is not enough: read it under load too.'}`,
      source: sources.practice,
    }
  const low = minimum === undefined ? 'within' : againstMinimum(one.psi, one.plusMinus, fuelPsi(minimum))
  const high = maximum === undefined ? 'within' : againstMaximum(one.psi, one.plusMinus, fuelPsi(maximum))
  const lowered =
    low === 'outside' && loweredByVacuum(one, states, fuelPsi(minimum ?? { value: 0, unit: 'psi' }))
  const verdict: Call = lowered
    ? 'cannot be called'
    : low === 'outside' || high === 'outside'
      ? 'outside'
      : low === 'within' && high === 'within'
        ? 'within'
        : 'cannot be called'
  return {
    ...base,
    verdict,
    limit: [
      ...(minimum ? [`at least ${words(fuelPsi(minimum))}`] : []),
      ...(maximum ? [`at most ${words(fuelPsi(maximum))}`] : []),
    ].join(', '),
    why: `${words(one.psi)}, ${stateWords[one.state]}${
      lowered
        ? ': below the range, which key on reaches. A regulator that follows manifold vacuum does that; the service information says for which state the range holds.'
        : low === 'outside'
          ? ': too little. Voltage at the pump, filter, pump, regulator.'
          : high === 'outside'
            ? ': too much. Return line, regulator, its vacuum hose.'
            : `.${settle(verdict)}`
    }`,
    source: sources.typed,
  }
}

/** With the throttle shut such a regulator takes the vacuum off; under load there is none. */
const loweredByVacuum = (one: AtState, states: readonly AtState[], minimum: number): boolean =>
  (one.state === 'idle' || one.state === '2500 rpm') &&
  states.some(
    other => other.state === 'key on' && againstMinimum(other.psi, other.plusMinus, minimum) !== 'outside',
  )

/** A pump or filter that is spent shows where the engine asks for fuel. */
function underLoad(states: readonly AtState[], { stage, units }: Setting): GaugeVerdict[] {
  const load = states.find(one => one.state === 'load')
  const idle = states.find(one => one.state === 'idle')
  if (!load || !idle) return []
  const change = tidy(load.psi - idle.psi)
  const doubt = Math.hypot(load.difference, idle.difference) / Math.SQRT2
  const falls = againstMinimum(change, doubt, 0) === 'outside'
  return [
    {
      test: 'fuel pressure',
      rule: 'load against idle',
      stage,
      ...pressureShown(change, units),
      plusMinus: pressureShown(doubt, units).value,
      verdict: falls ? 'outside' : 'within',
      limit: 'does not fall under load',
      why: falls
        ? `${pressureWords(idle.psi, units)} at idle falls to ${pressureWords(load.psi, units)} under load: filter, pump or its voltage cannot follow.`
        : `${pressureWords(idle.psi, units)} at idle, ${pressureWords(load.psi, units)} under load: it does not clearly fall.`,
      source: 'articles on fuel trim and pressure; common practice',
    },
  ]
}

export const fuelPressureGauge: Gauge = {
  test: 'fuel pressure',
  title: 'Fuel pressure',
  cautions: [
    'Relieve the pressure first by the service information; wrap the fitting with a shop towel, what is left sprays.',
    'Direct injection rails hold thousands of psi: never open or gauge the high-pressure side this way.',
    'Ventilate, no flame, no spark test nearby, extinguisher at hand, eye protection. Check every joint for leaks before starting.',
  ],
  steps: [
    'Battery charged. Fit the gauge, key on: pump primes; read it.',
    'Idle, 2500 rpm, then under load: in order at idle is not enough.',
    'Stop it; read at once (nought minutes) and again after the minutes that the service information names.',
    'Type range and fall from the service information under Circumstances: they win over everything here.',
  ],
  judge: judgeFuelPressure,
}

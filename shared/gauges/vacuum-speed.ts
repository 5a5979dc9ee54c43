// Vacuum away from idle: held at 2500 rpm, and on the overrun with the throttle shut; each against the idle reading.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMinimum, readingError, settle } from './calling.ts'
import { type ShownUnits, vacuumWords } from './shown.ts'
import { sources } from './sources.ts'
import type { VacuumEntry } from './vacuum-entry.ts'
import { doubtBetween, phaseValue, possiblePulls, type VacuumValue } from './vacuum-values.ts'
import { shownVacuum } from './vacuum-words.ts'
import type { GaugeVerdict } from './verdict.ts'

/** A 2500 rpm reading lower than idle by more than this, one scale division, is a fall. */
const fallAtSpeed = 2 * readingError.inHg

export function judgeFast(
  job: Job,
  stage: Stage,
  idle: VacuumValue | undefined,
  units: ShownUnits,
): GaugeVerdict[] {
  const fast = phaseValue(job, stage, '2500 rpm')
  if (!fast) return []
  const base = {
    test: 'vacuum',
    rule: '2500 rpm',
    stage,
    ...shownVacuum(fast, units),
    source: sources.fast,
  } as const
  if (!idle)
    return [
      {
        ...base,
        verdict: 'noted',
        limit: 'equal to idle or slightly above',
        why: 'The idle reading is missing, so there is nothing to hold this one against.',
      },
      ...held(job, stage, fast, units),
    ]
  const doubt = doubtBetween(fast, idle)
  const verdict = againstMinimum(fast.value - idle.value, doubt, -fallAtSpeed)
  return [
    {
      ...base,
      verdict,
      limit: `equal to the idle reading of ${vacuumWords(idle.value, units)} or slightly above`,
      why:
        verdict === 'within'
          ? 'It does not fall with speed: the exhaust is not held back.'
          : `Below idle at speed: a restricted exhaust, or exhaust-gas recirculation stuck open.${settle(verdict)}`,
    },
    ...held(job, stage, fast, units),
  ]
}

type Trend = NonNullable<VacuumEntry['trend']>
type TrendMeaning = { verdict: GaugeVerdict['verdict']; why: string; source: string }

const ordnance = 'US Army Ordnance subcourse OD1001, lesson 3; TM 10-3930-618-20'
const pump = 'hand vacuum pump manual (MV8500)'

/** The worst first: of several pulls the worst that was seen counts. */
const trends: readonly (readonly [Trend, TrendMeaning])[] = [
  [
    'falls toward zero',
    {
      verdict: 'outside',
      why: 'It falls toward zero while the speed is held: exhaust restriction, or exhaust-gas recirculation stuck open; test that apart.',
      source: pump,
    },
  ],
  [
    'falls slowly',
    {
      verdict: 'watch',
      why: 'It falls away while the speed is held: exhaust restriction; the faster the fall, the worse.',
      source: ordnance,
    },
  ],
  ['holds', { verdict: 'within', why: 'It holds: nothing builds up in the exhaust.', source: ordnance }],
  ['rises', { verdict: 'within', why: 'It rises: the exhaust is free.', source: pump }],
]

function held(job: Job, stage: Stage, fast: VacuumValue, units: ShownUnits): GaugeVerdict[] {
  const seen = new Set(possiblePulls(job, stage, '2500 rpm').flatMap(({ entry }) => entry.trend ?? []))
  const found = trends.find(([trend]) => seen.has(trend))
  return found
    ? [
        {
          test: 'vacuum',
          rule: '2500 rpm, held',
          stage,
          ...shownVacuum(fast, units),
          limit: 'holds or rises while the speed is held',
          ...found[1],
        },
      ]
    : []
}

/** On the overrun the shut throttle and the turning engine pull more than at idle. */
export function judgeTrailing(
  job: Job,
  stage: Stage,
  idle: VacuumValue | undefined,
  units: ShownUnits,
): GaugeVerdict[] {
  const trailing = phaseValue(job, stage, 'trailing throttle')
  if (!trailing) return []
  const base = {
    test: 'vacuum',
    rule: 'trailing throttle',
    stage,
    ...shownVacuum(trailing, units),
    source: sources.practice,
  } as const
  if (!idle)
    return [
      {
        ...base,
        verdict: 'noted',
        limit: 'higher than idle',
        why: 'The idle reading is missing, so there is nothing to hold this one against.',
      },
    ]
  const over = trailing.value - idle.value
  const doubt = doubtBetween(trailing, idle)
  const verdict = over > doubt ? 'within' : over < -doubt ? 'watch' : 'cannot be called'
  return [
    {
      ...base,
      verdict,
      limit: `higher than the idle reading of ${vacuumWords(idle.value, units)}`,
      why:
        verdict === 'within'
          ? 'Higher than idle, as it should be with the throttle shut and the engine turning fast.'
          : `Not above idle on the overrun: a throttle or idle passage that does not shut, an intake leak, rings or valves that do not seal.${settle(verdict)}`,
    },
  ]
}

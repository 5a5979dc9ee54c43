// Vacuum while cranking: whether the pulses are even comes first (needle.ts), the level second, for published minimums differ.
import { conditionsOf } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { atmosphereOf, crankingBand } from './atmosphere.ts'
import { againstMinimum, settle } from './calling.ts'
import { ruleSet } from './rule-sets.ts'
import { type ShownUnits, vacuumWords } from './shown.ts'
import { phaseValue, possiblePulls, swingOf, type VacuumValue } from './vacuum-values.ts'
import { airWords, shownVacuum } from './vacuum-words.ts'
import type { GaugeVerdict } from './verdict.ts'

export function judgeCranking(job: Job, stage: Stage, units: ShownUnits): GaugeVerdict[] {
  const cranking = phaseValue(job, stage, 'cranking')
  return cranking ? [...flutter(job, stage, units), level(job, stage, cranking, units)] : []
}

function flutter(job: Job, stage: Stage, units: ShownUnits): GaugeVerdict[] {
  const pulls = possiblePulls(job, stage, 'cranking')
  const swing = swingOf(job, pulls)
  if (!swing) return []
  const looked = pulls.some(pull => pull.entry.needle !== undefined)
  return [
    {
      test: 'vacuum',
      rule: 'cranking, flutter',
      stage,
      ...shownVacuum(swing, units),
      verdict: 'noted',
      limit: 'even pulses; no width is published',
      why: `It flutters between ${vacuumWords(swing.low, units)} and ${vacuumWords(swing.high, units)}. ${
        looked
          ? 'Whether the pulses are alike tells of the cylinders, not how wide they are.'
          : 'Nobody noted whether the pulses were alike, which tells more than how wide they are: watch the needle again.'
      }`,
      source: 'hand vacuum pump manual (MV8500)',
    },
  ]
}

/** Between the least and what is surely enough it cannot be called. */
function level(job: Job, stage: Stage, cranking: VacuumValue, units: ShownUnits): GaugeVerdict {
  const air = atmosphereOf(job.circumstances)
  const rule = ruleSet('crankingVacuum', job)
  const { least, sure } = crankingBand(air, rule)
  const { throttle, crankingRpm, batteryVoltsBefore } = conditionsOf(job, 'vacuum', stage)
  const low = againstMinimum(cranking.value, cranking.plusMinus, least)
  const enough = againstMinimum(cranking.value, sure > least ? 0 : cranking.plusMinus, sure) === 'within'
  const open = throttle === 'open' && !enough
  const verdict = enough ? 'within' : low === 'outside' && !open ? 'outside' : 'cannot be called'
  const at =
    crankingRpm === undefined && batteryVoltsBefore === undefined
      ? ' The number means little without cranking speed and battery voltage.'
      : ''
  const zero = cranking.value <= cranking.plusMinus
  const why = open
    ? 'The throttle was open, and an open throttle makes no vacuum: repeat with it shut.'
    : verdict === 'outside'
      ? `${
          zero
            ? 'None to be told from zero: think of the timing drive, no sealing at all, or a wide open leak.'
            : 'Low: throttle or gasket leak, valve timing, or slow cranking.'
        }${at}`
      : `Whether the pulses are even matters more than the number.${settle(verdict)}`
  return {
    test: 'vacuum',
    rule: 'cranking',
    stage,
    ...shownVacuum(cranking, units),
    verdict,
    limit: `${sure > least ? `${vacuumWords(least, units)} to ${vacuumWords(sure, units)}` : vacuumWords(least, units)} or more, throttle shut; ${airWords(air, units)}`,
    why,
    source: `${rule.source}${zero && verdict === 'outside' ? '; zero: an archive of vacuum gauge tips' : ''}; altitude by pressure ratio: calculated`,
  }
}

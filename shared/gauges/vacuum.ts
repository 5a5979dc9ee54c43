// Manifold vacuum at idle, at 2500 rpm, in a snap and while cranking, against bands that follow the altitude.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toVacuum } from '../units/convert.ts'
import { atmosphereOf, crankingMinimum, idleBand } from './atmosphere.ts'
import { needleMeanings } from './needle.ts'
import type { VacuumPhase } from './vacuum-entry.ts'
import { againstMinimum, commonPractice, type GaugeVerdict, median, settle } from './verdict.ts'

/** Read to half of a 1 inHg division. */
export const vacuumReading = 0.5

const round = (value: number): number => Number(value.toFixed(1))
type VacuumPull = PullOf<'vacuum'>
const inHg = (pull: VacuumPull): number => toVacuum(pull.entry.reading, 'inHg')

/** Middle of the valid readings of one phase, inHg; undefined when there are none. */
export function vacuumValue(job: Job, stage: Stage, phase: VacuumPhase): number | undefined {
  const readings = ofPhase(job, stage, phase).map(inHg)
  return readings.length > 0 ? median(readings) : undefined
}

const ofPhase = (job: Job, stage: Stage, phase: VacuumPhase): VacuumPull[] =>
  validPulls(job, 'vacuum', stage).filter(pull => pull.entry.phase === phase)

/** Verdicts on the whole engine; vacuum alone never names a cylinder. */
export function judgeVacuum(job: Job, stage: Stage): GaugeVerdict[] {
  const atmosphere = atmosphereOf(job.circumstances)
  const base = { test: 'vacuum', stage, unit: 'inHg', plusMinus: vacuumReading } as const
  const where = `air pressure ${atmosphere.inHg.toFixed(2)} inHg, ${atmosphere.basis}`
  const verdicts: GaugeVerdict[] = []
  const impossible = validPulls(job, 'vacuum', stage).filter(pull => inHg(pull) > atmosphere.inHg)
  for (const pull of impossible)
    verdicts.push({
      ...base,
      rule: 'possible at all',
      value: round(inHg(pull)),
      verdict: 'cannot be called',
      limit: `below the air pressure (${where})`,
      why: `${pull.entry.phase}: a vacuum above the local air pressure cannot be: check the unit, the gauge and the altitude.`,
      source: 'physics',
    })
  if (impossible.length > 0) return verdicts

  const idle = vacuumValue(job, stage, 'idle')
  if (idle !== undefined) {
    const band = idleBand(atmosphere)
    const low = againstMinimum(idle, vacuumReading, band.low)
    const high = idle - vacuumReading > band.high
    verdicts.push({
      ...base,
      rule: 'idle',
      value: round(idle),
      verdict: high ? 'watch' : low,
      limit: `${band.low.toFixed(1)} to ${band.high.toFixed(1)} inHg (${where})`,
      why: high
        ? 'Higher than usual: over-advanced timing can do that. The pattern of the needle counts for more than the number.'
        : `${low === 'outside' ? 'Low: something that hits all cylinders alike, or a leak.' : 'In the band, which does not yet prove the engine.'}${settle(low)}`,
      source: `17 to 21 inHg at sea level: ${commonPractice}; altitude by subtraction: US Army TM 9-4910-677-14&P and US Standard Atmosphere 1976`,
    })
  }
  const fast = vacuumValue(job, stage, '2500 rpm')
  if (fast !== undefined && idle !== undefined) {
    const call = againstMinimum(fast - idle, vacuumReading, 0)
    verdicts.push({
      ...base,
      rule: '2500 rpm',
      value: round(fast),
      verdict: call === 'outside' ? 'outside' : 'within',
      limit: `equal to idle (${round(idle)} inHg) or slightly above`,
      why:
        call === 'outside'
          ? 'Below idle at speed: think of a restricted exhaust or a stuck exhaust-gas valve.'
          : 'The exhaust flows freely.',
      source: `${commonPractice}; vacuum pump manual (model MV8500)`,
    })
  }
  verdicts.push(...snaps(job, stage, idle), ...cranking(job, stage), ...needles(job, stage))
  return verdicts
}

function snaps(job: Job, stage: Stage, idle: number | undefined): GaugeVerdict[] {
  const pulls = ofPhase(job, stage, 'snap')
  const rebounds = pulls.flatMap(({ entry }) => (entry.rebound ? [toVacuum(entry.rebound, 'inHg')] : []))
  if (pulls.length === 0) return []
  const low = median(pulls.map(inHg))
  const base = {
    test: 'vacuum',
    stage,
    rule: 'snap',
    unit: 'inHg',
    plusMinus: vacuumReading,
    source: `${commonPractice}; US Army TM 9-4910-677-14&P`,
  } as const
  if (idle === undefined || rebounds.length === 0)
    return [
      {
        ...base,
        value: round(low),
        verdict: 'noted',
        limit: 'falls to between 0 and 5, then rebounds above idle',
        why: 'Rebound and idle are both needed to judge a snap; a fall to zero alone is no fault.',
      },
    ]
  const rebound = median(rebounds)
  const small = rebound + vacuumReading < idle
  return [
    {
      ...base,
      value: round(rebound),
      verdict: small ? 'watch' : 'within',
      limit: `rebound above idle (${round(idle)} inHg)`,
      why: small
        ? `Falls to ${round(low)}, rebounds only to ${round(rebound)}: rings not sealing come first, once gasket leaks are excluded.`
        : `Falls to ${round(low)}, rebounds to ${round(rebound)}: a wide fall and a wide rebound are normal.`,
    },
  ]
}

function cranking(job: Job, stage: Stage): GaugeVerdict[] {
  const value = vacuumValue(job, stage, 'cranking')
  if (value === undefined) return []
  const minimum = crankingMinimum(atmosphereOf(job.circumstances))
  const verdict = againstMinimum(value, vacuumReading, minimum)
  return [
    {
      test: 'vacuum',
      stage,
      rule: 'cranking',
      value: round(value),
      plusMinus: vacuumReading,
      unit: 'inHg',
      verdict: verdict === 'outside' ? 'watch' : verdict,
      limit: `flutters at ${minimum.toFixed(1)} inHg or more, throttle shut`,
      why: `${verdict === 'outside' ? 'Low: throttle or gasket leak, valve timing or slow cranking.' : 'Enough; whether the pulses are even matters more.'}${settle(verdict)}`,
      source: commonPractice,
    },
  ]
}

function needles(job: Job, stage: Stage): GaugeVerdict[] {
  return validPulls(job, 'vacuum', stage).flatMap(pull => {
    const { needle } = pull.entry
    if (!needle || needle === 'steady') return []
    const meaning = needleMeanings[needle]
    return [
      {
        test: 'vacuum',
        stage,
        rule: `needle: ${needle}`,
        value: round(inHg(pull)),
        unit: 'inHg',
        verdict: 'watch',
        limit: 'a steady needle (a slight even ripple is normal with few cylinders)',
        why: meaning.text,
        source: meaning.source,
      },
    ]
  })
}

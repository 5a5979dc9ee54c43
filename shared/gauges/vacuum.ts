// Manifold vacuum at idle, at 2500 rpm, in a snap and while cranking, against bands that follow the altitude.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type Atmosphere, atmosphereOf, crankingBand, idleBand } from './atmosphere.ts'
import { againstMaximum, againstMinimum, readingError, settle } from './calling.ts'
import { judgeNeedle } from './needle.ts'
import { type ShownUnits, tradeUnits, vacuumShown, vacuumWords } from './shown.ts'
import { sources } from './sources.ts'
import { judgeSnap } from './vacuum-snap.ts'
import { greatestOf, isPossible, phaseValue, possiblePulls, type VacuumValue } from './vacuum-values.ts'
import type { GaugeVerdict } from './verdict.ts'

/** A 2500 rpm reading lower than idle by more than this, one scale division, is a fall. */
const fallAtSpeed = 2 * readingError.inHg

/** Verdicts on the whole engine; vacuum alone never names a cylinder. */
export function judgeVacuum(job: Job, stage: Stage, units: ShownUnits = tradeUnits): GaugeVerdict[] {
  const air = atmosphereOf(job.circumstances)
  const idle = phaseValue(job, stage, 'idle')
  const fast = phaseValue(job, stage, '2500 rpm')
  const cranking = phaseValue(job, stage, 'cranking')
  return [
    ...impossible(job, stage, air, units),
    ...(idle ? [judgeIdle(job, stage, idle, air, units)] : []),
    ...(fast ? [judgeFast(fast, idle, stage, units)] : []),
    ...judgeSnap(job, stage, idle, units),
    ...(cranking ? [judgeCranking(cranking, air, stage, units)] : []),
    ...judgeNeedle(job, stage, units),
  ]
}

const airBasis: Readonly<Record<Atmosphere['basis'], string>> = {
  barometer: 'by the barometer',
  altitude: 'by the altitude',
  'assumed sea level': 'sea level assumed',
}

const airWords = (air: Atmosphere, units: ShownUnits): string =>
  `air pressure ${vacuumWords(air.inHg, units)}, ${airBasis[air.basis]}`

const shown = ({ value, plusMinus }: VacuumValue, units: ShownUnits) => ({
  ...vacuumShown(value, units),
  plusMinus: vacuumShown(plusMinus, units).value,
})

/** One verdict for each state of the engine, on the highest of its readings that cannot be. */
function impossible(job: Job, stage: Stage, air: Atmosphere, units: ShownUnits): GaugeVerdict[] {
  const pulls = validPulls(job, 'vacuum', stage).filter(pull => !isPossible(job, pull))
  return (['idle', '2500 rpm', 'snap', 'cranking'] as const).flatMap(phase => {
    const readings = pulls.filter(pull => pull.entry.phase === phase).map(greatestOf)
    if (readings.length === 0) return []
    return [
      {
        test: 'vacuum',
        rule: `possible at all, ${phase}`,
        stage,
        ...vacuumShown(Math.max(...readings), units),
        verdict: 'cannot be called',
        limit: `not above the ${airWords(air, units)}`,
        why: `A vacuum above the local air pressure cannot be, so ${readings.length === 1 ? 'this reading is' : `${readings.length} readings are`} left out: check unit, gauge and altitude.`,
        source: sources.physics,
        about: 'reading',
      } as const,
    ]
  })
}

function judgeIdle(
  job: Job,
  stage: Stage,
  idle: VacuumValue,
  air: Atmosphere,
  units: ShownUnits,
): GaugeVerdict {
  const band = idleBand(air)
  const low = againstMinimum(idle.value, idle.plusMinus, band.low)
  const high = againstMaximum(idle.value, idle.plusMinus, band.high)
  const steady = possiblePulls(job, stage, 'idle').some(pull => pull.entry.needle === 'steady')
  const verdict = low === 'within' ? (high === 'outside' ? 'watch' : high) : low
  const why =
    verdict === 'outside'
      ? `Low${steady ? ' and steady' : ''}: think first of what all cylinders share, late ignition or valve timing, an intake leak, worn rings.`
      : verdict === 'watch'
        ? 'Higher than usual: too much ignition advance can do that. The needle counts for more than the number.'
        : verdict === 'within'
          ? 'In the band; idle control can hide a fault, so this does not clear the engine.'
          : `On the edge of the band.${settle(verdict)}`
  return {
    test: 'vacuum',
    rule: 'idle',
    stage,
    ...shown(idle, units),
    verdict,
    limit: `${vacuumWords(band.low, units)} to ${vacuumWords(band.high, units)}; ${airWords(air, units)}`,
    why,
    source: sources.idle,
  }
}

function judgeFast(
  fast: VacuumValue,
  idle: VacuumValue | undefined,
  stage: Stage,
  units: ShownUnits,
): GaugeVerdict {
  const base = {
    test: 'vacuum',
    rule: '2500 rpm',
    stage,
    ...shown(fast, units),
    source: sources.fast,
  } as const
  if (!idle)
    return {
      ...base,
      verdict: 'noted',
      limit: 'equal to idle or slightly above',
      why: 'The idle reading is missing, so there is nothing to hold this one against.',
    }
  const doubt = Math.hypot(fast.plusMinus, idle.plusMinus)
  const verdict = againstMinimum(fast.value - idle.value, doubt, -fallAtSpeed)
  return {
    ...base,
    verdict,
    limit: `equal to the idle reading of ${vacuumWords(idle.value, units)} or slightly above`,
    why:
      verdict === 'within'
        ? 'It does not fall with speed: the exhaust is not held back.'
        : `Below idle at speed: a restricted exhaust, or exhaust-gas recirculation stuck open.${settle(verdict)}`,
  }
}

/** Between 2 and 2.5 inHg (at sea level) the common figures differ, so there it cannot be called. */
function judgeCranking(
  cranking: VacuumValue,
  air: Atmosphere,
  stage: Stage,
  units: ShownUnits,
): GaugeVerdict {
  const { low, high } = crankingBand(air)
  const verdict =
    againstMinimum(cranking.value, cranking.plusMinus, low) === 'outside'
      ? 'outside'
      : againstMinimum(cranking.value, 0, high) === 'within'
        ? 'within'
        : 'cannot be called'
  return {
    test: 'vacuum',
    rule: 'cranking',
    stage,
    ...shown(cranking, units),
    verdict,
    limit: `flutters at ${vacuumWords(low, units)} to ${vacuumWords(high, units)} or more, throttle shut; ${airWords(air, units)}`,
    why:
      verdict === 'outside'
        ? 'Low: throttle or gasket leak, valve timing, or slow cranking. The number means little without cranking speed and battery voltage.'
        : `Whether the pulses are even matters more than the number.${settle(verdict)}`,
    source: sources.cranking,
  }
}

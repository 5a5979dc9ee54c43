// Idle vacuum: the value against its expectation, and how far the needle swings against what so few cylinders do by nature.
import { cylindersOf } from '../engine/relations.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { atmosphereOf, fallOf } from './atmosphere.ts'
import { againstMaximum, againstMinimum, settle } from './calling.ts'
import { engineOf, naturalRipple, rippleSource } from './needle-ripple.ts'
import { needleRows, rowWords } from './needle-table.ts'
import { type ShownUnits, vacuumWords } from './shown.ts'
import { expectationWords, idleExpectation } from './vacuum-expectation.ts'
import { possiblePulls, swingOf, type VacuumValue } from './vacuum-values.ts'
import { airWords, shownVacuum } from './vacuum-words.ts'
import type { GaugeVerdict } from './verdict.ts'

/** Published as about 15 inHg at sea level with some swinging; the inch below it is ours. */
const overlap = ' A camshaft of much overlap idles near 15 inHg at sea level by nature, and swings a little.'
const overlapSource = 'Lincoln general vacuum test page; Subaru intake manifold vacuum page'

export function judgeIdle(job: Job, stage: Stage, idle: VacuumValue, units: ShownUnits): GaugeVerdict {
  const air = atmosphereOf(job.circumstances)
  const band = idleExpectation(job)
  const low = againstMinimum(idle.value, idle.plusMinus, band.low)
  const high = againstMaximum(idle.value, idle.plusMinus, band.high)
  // Higher than usual is no fault of sealing; above what the maker allows is outside his limit.
  const over = band.typed === 'both' || band.typed === 'high' ? 'outside' : 'watch'
  const verdict = low === 'within' ? (high === 'outside' ? over : high) : low
  const steady = possiblePulls(job, stage, 'idle').some(pull => pull.entry.needle === 'steady')
  const base = {
    test: 'vacuum',
    rule: 'idle',
    stage,
    ...shownVacuum(idle, units),
    verdict,
    limit: `${expectationWords(band, job, units)}; ${airWords(air, units)}`,
  } as const
  if (low === 'outside') {
    const shared =
      'think first of what all cylinders share, late ignition or valve timing, an intake leak, worn rings.'
    const atSeaLevel = idle.value + fallOf(air)
    if (!steady)
      return {
        ...base,
        why: `Low: ${shared}${atSeaLevel >= 14 ? overlap : ''}`,
        source: atSeaLevel >= 14 ? `${band.source}; camshafts: ${overlapSource}` : band.source,
      }
    const { causes, source } = rowWords(
      needleRows('steady', { reading: atSeaLevel, below: band.low - idle.value }),
    )
    return {
      ...base,
      why: `Low and steady: ${shared} What charts give for so much below: ${causes}.`,
      source: `${band.source}; pattern: ${source}`,
    }
  }
  return { ...base, why: notLow(verdict), source: band.source }
}

function notLow(verdict: GaugeVerdict['verdict']): string {
  if (verdict === 'within')
    return 'In the band; idle control can hide a fault, so this does not clear the engine.'
  return verdict === 'cannot be called'
    ? `On the edge of the band.${settle(verdict)}`
    : 'Higher than usual: too much ignition advance can do that. The needle counts for more than the number.'
}

/** Nothing where nobody noted lowest and highest. */
export function judgeSwing(job: Job, stage: Stage, units: ShownUnits): GaugeVerdict[] {
  const swing = swingOf(job, possiblePulls(job, stage, 'idle'))
  if (!swing) return []
  const cylinders = cylindersOf(job.layout).length
  const natural = naturalRipple(cylinders)
  const call = againstMaximum(swing.value, swing.plusMinus, natural)
  const verdict = call === 'outside' ? 'watch' : call
  return [
    {
      test: 'vacuum',
      rule: 'idle, swing',
      stage,
      ...shownVacuum(swing, units),
      verdict,
      limit: `at most about ${vacuumWords(natural, units)} of even ripple on ${engineOf(cylinders)}`,
      why:
        verdict === 'within'
          ? `So much ripple is natural on ${engineOf(cylinders)} as long as it is even.`
          : `${verdict === 'watch' ? 'Wider than the ripple' : 'About as wide as the ripple'} of ${engineOf(cylinders)}: watch whether the needle moves in time with the engine, now and then, or slowly. A strong camshaft overlap also moves it.${settle(verdict)}`,
      source: rippleSource,
    },
  ]
}

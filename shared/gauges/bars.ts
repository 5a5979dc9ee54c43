// The numbers behind the pictures of a test: bars with their limits, and the idle band. All in psi, rpm or inHg.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type Atmosphere, atmosphereOf } from './atmosphere.ts'
import { balanceShares } from './balance.ts'
import { balanceRules, type Share } from './balance-share.ts'
import { type BalanceValue, balanceValues } from './balance-values.ts'
import { byTester, highestOf } from './compression-comparison.ts'
import { type CompressionValue, compressionValues, inPsi, isMeasured } from './compression-values.ts'
import { median } from './middle.ts'
import { ruleSet } from './rule-sets.ts'
import { sources } from './sources.ts'
import { idleExpectation } from './vacuum-expectation.ts'
import { phaseValue, possiblePulls, swingOf, type VacuumValue } from './vacuum-values.ts'

export type LimitLine = { at: number; label: string; source: string }

export type CompressionBars = {
  unit: 'psi'
  values: CompressionValue[]
  /** Lines that a bar should reach; the same rules as the verdicts, the highest line first. */
  limits: LimitLine[]
}

/** A cylinder without a pull has no bar: missing is a gap, not zero. */
export function compressionBars(job: Job, stage: Stage): CompressionBars {
  const values = compressionValues(job, stage)
  const measured = values.filter(isMeasured)
  const highest = highestOf(measured)
  const typed = job.circumstances.specification
  // With several testers there is no one line that holds for all bars.
  const compared = highest !== undefined && measured.length > 1 && byTester(measured).length === 1
  const spread = ruleSet('compressionSpread', job)
  const share = ruleSet('compressionShare', job)
  const shareBase =
    share.of === 'highest'
      ? highest?.dry
      : measured.reduce((sum, one) => sum + one.dry, 0) / Math.max(1, measured.length)
  const limits: (LimitLine | false | undefined)[] = [
    typed?.compressionMinimum && {
      at: inPsi(typed.compressionMinimum),
      label: 'specified minimum',
      source: sources.typed,
    },
    compared &&
      typed?.compressionSpread !== undefined && {
        at: highest.dry - inPsi(typed.compressionSpread),
        label: 'specified spread',
        source: sources.typed,
      },
    compared &&
      typed?.compressionSpread === undefined && {
        at: highest.dry - spread.psi,
        label: `${spread.psi} psi below the highest`,
        source: spread.source,
      },
    compared &&
      shareBase !== undefined &&
      typed?.compressionSpread === undefined && {
        at: (shareBase * share.percent) / 100,
        label: `${share.percent} % of the ${share.of}`,
        source: share.source,
      },
  ]
  return {
    unit: 'psi',
    values,
    limits: limits.flatMap(one => (one ? [one] : [])).toSorted((a, b) => b.at - a.at),
  }
}

export type BalanceBars = {
  unit: 'rpm'
  /**
   * `drop` is what the verdict judges and `ownDrop` what the readings themselves show. `limit` is half the middle drop of
   * the other cylinders, absent while there are none; `share` the part of their middle work, in percent.
   */
  values: (BalanceValue & { limit?: number; share?: Share })[]
}

export function balanceBars(job: Job, stage: Stage): BalanceBars {
  const values = balanceValues(job, stage)
  const shares = new Map(balanceShares(job, stage).map(one => [one.cylinder, one.speed]))
  return {
    unit: 'rpm',
    values: values.map(one => {
      const others = values.filter(other => other !== one).map(other => other.drop)
      const share = shares.get(one.cylinder)
      return {
        ...one,
        ...(others.length === 0 ? {} : { limit: (median(others) * balanceRules.weakShare) / 100 }),
        ...(share ? { share } : {}),
      }
    }),
  }
}

export type VacuumBand = {
  unit: 'inHg'
  /** Where idle is expected, here and in today's air. */
  low: number
  high: number
  /** Which edges were typed for this vehicle; the others are the general rule's. */
  typed: 'both' | 'low' | 'high' | 'none'
  source: string
  atmosphere: Atmosphere
  /** End of the picture's scale, which begins at no vacuum: the local air pressure. */
  to: number
  idle?: VacuumValue
  /** Lowest and highest the needle reached at idle, where that was noted. */
  swing?: { low: number; high: number }
}

/** The idle reading against its expectation: what is judged is what is drawn. */
export function vacuumBand(job: Job, stage: Stage): VacuumBand {
  const atmosphere = atmosphereOf(job.circumstances)
  const idle = phaseValue(job, stage, 'idle')
  const swing = swingOf(job, possiblePulls(job, stage, 'idle'))
  return {
    unit: 'inHg',
    ...idleExpectation(job),
    atmosphere,
    to: atmosphere.inHg,
    ...(idle ? { idle } : {}),
    ...(swing ? { swing: { low: swing.low, high: swing.high } } : {}),
  }
}

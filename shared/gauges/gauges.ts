// The tests a technician can enter, as one table: title, cautions and steps at the place they are needed, and the judge.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { balanceGauge } from './balance-gauge.ts'
import { compressionGauge } from './compression-gauge.ts'
import { fuelPressureGauge } from './fuel-pressure.ts'
import type { Gauge } from './gauge.ts'
import { injectorBalanceGauge } from './injector-balance.ts'
import { injectorGauge } from './injector.ts'
import { leakDownGauge } from './leak-down-gauge.ts'
import { misfireCountsGauge } from './misfire-counts.ts'
import { mode06Gauge } from './mode-06.ts'
import { observationGauge } from './observation.ts'
import { crankSpeedGauge, relativeCompressionGauge } from './recording-gauges.ts'
import { resistanceGauge } from './resistance.ts'
import { runningCompressionGauge } from './running-compression-gauge.ts'
import { type ShownUnits, tradeUnits } from './shown.ts'
import { sparkGauge } from './spark.ts'
import { oddOnes } from './spoilers-odd-one.ts'
import { swapGauge } from './swap.ts'
import { trimsGauge } from './trims.ts'
import { troubleCodesGauge } from './trouble-codes.ts'
import { vacuumGauge } from './vacuum-gauge.ts'
import type { GaugeVerdict } from './verdict.ts'

/** Stands beside every caution. */
export const deference =
  "The vehicle's service information, local rules and the limits of your licence come before anything here."

export const gauges: readonly Gauge[] = [
  compressionGauge,
  runningCompressionGauge,
  leakDownGauge,
  balanceGauge,
  vacuumGauge,
  misfireCountsGauge,
  troubleCodesGauge,
  mode06Gauge,
  sparkGauge,
  resistanceGauge,
  relativeCompressionGauge,
  crankSpeedGauge,
  fuelPressureGauge,
  injectorBalanceGauge,
  injectorGauge,
  trimsGauge,
  swapGauge,
  observationGauge,
]

/** Every verdict that the readings of one stage allow. */
export const judgeAll = (job: Job, stage: Stage, units: ShownUnits = tradeUnits): GaugeVerdict[] =>
  withOddOnes(
    gauges.flatMap(gauge => gauge.judge(job, stage, units)),
    stage,
  )

const withOddOnes = (verdicts: GaugeVerdict[], stage: Stage): GaugeVerdict[] => [
  ...verdicts,
  ...oddOnes(verdicts, stage),
]

// The tests a technician can enter, as one table: title, cautions and steps at the place they are needed, and the judge.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { balanceGauge } from './balance-gauge.ts'
import { judgeCompression } from './compression.ts'
import type { Gauge } from './gauge.ts'
import { misfireCountsGauge } from './misfire-counts.ts'
import { mode06Gauge } from './mode-06.ts'
import { resistanceGauge } from './resistance.ts'
import { type ShownUnits, tradeUnits } from './shown.ts'
import { sparkGauge } from './spark.ts'
import { troubleCodesGauge } from './trouble-codes.ts'
import { vacuumGauge } from './vacuum-gauge.ts'
import type { GaugeVerdict } from './verdict.ts'

/** Stands beside every caution. */
export const deference =
  "The vehicle's service information, local rules and the limits of your licence come before anything here."

export const gauges: readonly Gauge[] = [
  {
    test: 'compression',
    title: 'Compression',
    cautions: [
      'Disable ignition and injection before cranking with the plugs out: what sprays from a plug hole is fuel, and a coil without a path to ground can injure.',
      'Nobody near belts and fan while cranking; neutral or park, brake on; eye protection.',
      'Let an aluminium head cool before the plugs come out. Never so much oil for a wet pull that the engine locks.',
    ],
    steps: [
      'Blow the plug wells clean, then take all plugs out.',
      'Battery charged, throttle wide open, engine warm unless the maker says otherwise; write down which.',
      'Same number of puffs on every cylinder (4 to 5 seconds), at least two pulls each; note first puff and final.',
      'Low cylinder: about 15 ml of engine oil, a few turns, then a wet pull. Give a good cylinder the same oil and compare.',
    ],
    judge: judgeCompression,
  },
  balanceGauge,
  vacuumGauge,
  misfireCountsGauge,
  troubleCodesGauge,
  mode06Gauge,
  sparkGauge,
  resistanceGauge,
]

/** Every verdict that the readings of one stage allow. */
export const judgeAll = (job: Job, stage: Stage, units: ShownUnits = tradeUnits): GaugeVerdict[] =>
  gauges.flatMap(gauge => gauge.judge(job, stage, units))

// Cranking compression as a test on the page: its cautions and steps, and who judges it.
import { compressionSpoilers } from './compression-spoilers.ts'
import { judgeCompression } from './compression.ts'
import type { Gauge } from './gauge.ts'
import { tradeUnits } from './shown.ts'

export const compressionGauge: Gauge = {
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
    'Same number of puffs on every cylinder (4 to 5 seconds), at least two pulls each; note first puff and final, and battery volts or cranking speed.',
    'One tester for all cylinders: its scale and the volume of its hose belong to the reading.',
    'Low cylinder: about 15 ml of engine oil, a few turns, then a wet pull. Give a good cylinder the same oil and compare.',
  ],
  judge: (job, stage, units = tradeUnits) => [
    ...compressionSpoilers(job, stage, units),
    ...judgeCompression(job, stage, units),
  ],
}

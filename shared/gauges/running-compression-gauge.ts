// Running compression as a test on the page: its cautions and steps, and who judges it.
import type { Gauge } from './gauge.ts'
import { judgeRunningCompression } from './running-compression.ts'

export const runningCompressionGauge: Gauge = {
  test: 'running compression',
  title: 'Running compression',
  cautions: [
    'The engine runs with one plug out: ground the spark of that cylinder through a tester and unplug its injector, or fuel sprays from the hole and the coil is damaged.',
    'Hose and hands clear of fan, belts and exhaust; hot gas comes out of the plug hole and the gauge. Eye protection, exhaust extraction on.',
    'Keep it short: oxygen from the idle cylinder heats the catalyst. Snap the throttle once and let go, in neutral or park with the brake on.',
  ],
  steps: [
    'Cranking compression first. Then put the other plugs back and take the valve out of the gauge hose.',
    'One cylinder at a time: start, let it idle, and note the steady reading.',
    'Snap the throttle open and shut at once; note the highest reading.',
    'Same gauge and same idle speed on every cylinder; refit the valve afterwards.',
  ],
  judge: judgeRunningCompression,
}

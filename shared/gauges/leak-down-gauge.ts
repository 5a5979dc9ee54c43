// Leak-down as a test on the page: its cautions and steps, and who judges it.
import type { Gauge } from './gauge.ts'
import { judgeLeakDown } from './leak-down.ts'

export const leakDownGauge: Gauge = {
  test: 'leak-down',
  title: 'Leak-down',
  cautions: [
    'Air turns the crank hard if the piston is not exactly at top dead centre: no tool left on the crank bolt, hands and clothes clear of belts, fan and propeller.',
    'Disable ignition and injection. Open the regulator slowly from zero, never beyond what tester and service information allow; let the pressure off before the adapter comes out.',
    'Open the radiator cap only when cold. Eye protection: air blows debris out of plug holes and filler.',
  ],
  steps: [
    'Engine warm, all plugs out, throttle open, oil filler cap off; coolant topped up cold and its cap left off.',
    'Bring the cylinder to top dead centre of compression. Coming back from beyond it, go half a turn back first so that lash and rings settle.',
    'Write down tester, orifice and pressure in (80 psi is usual). Let the reading settle, up to a minute.',
    'Listen at intake, tailpipe, oil filler, next plug hole and adapter, and look for bubbles in the radiator; note where it escapes.',
  ],
  judge: judgeLeakDown,
}

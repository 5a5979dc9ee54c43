// The vacuum test: cautions and steps at the place they are needed, and its judge.
import type { Gauge } from './gauge.ts'
import { judgeVacuum } from './vacuum.ts'

export const vacuumGauge: Gauge = {
  test: 'vacuum',
  title: 'Vacuum',
  cautions: [
    'Turning fan and belts, hot exhaust: sleeves and hair tied, exhaust extraction on; neutral or park, brake on.',
    'For cranking vacuum disable ignition and injection first, with every spark led to ground.',
  ],
  steps: [
    'Gauge on a large central port below the throttle, no restrictor in its hose; warm engine, accessories off.',
    'Cranking: throttle shut, idle passage and crankcase ventilation blocked; note lowest and highest of the flutter, cranking speed and battery voltage.',
    'Idle: middle of the needle, the swing where it moves, and what the needle does.',
    '2500 rpm held for a minute: the value, and whether it holds, rises or falls.',
    'Snap the throttle open and let it shut: lowest point, rebound, and where it settles. On the overrun from 2500 rpm: trailing throttle.',
    'Type altitude or barometer once under Circumstances: every 1000 ft takes about 1 inHg.',
  ],
  judge: judgeVacuum,
}

// The test of cylinder balance: cautions and steps at the place they are needed, and its judge.
import { judgeBalance } from './balance.ts'
import { judgeBaseline } from './balance-readings.ts'
import type { Gauge } from './gauge.ts'

export const balanceGauge: Gauge = {
  test: 'balance',
  title: 'Cylinder balance',
  cautions: [
    'Never pull a live lead by hand. Cut the injector, use a command function or a grounded probe.',
    'A spark that is cut needs a path to ground, or coil and insulation suffer; on shared coils cut fuel instead.',
    'Cutting spark alone sends raw fuel to the catalyst: keep each cut to a few seconds and let it cool.',
    'Turning fan and belts, hot exhaust: sleeves and hair tied, exhaust extraction on.',
  ],
  steps: [
    'Warm engine, accessories off. Fix idle air or raise the idle, and note it under Set-up: idle control hides a weak cylinder.',
    'Note speed and vacuum, cut one cylinder for a few seconds, note both again.',
    'Restore it, let the engine recover and note the speed once more: that shows drift.',
    'Go round every cylinder, then once more: a second round shows whether drops repeat.',
  ],
  judge: (job, stage, units) => [...judgeBaseline(job, stage, units), ...judgeBalance(job, stage, units)],
}

// What a moving vacuum needle usually means; several causes share a pattern, so these never name a part alone.
import type { VacuumEntry } from './vacuum-entry.ts'

type Needle = Exclude<VacuumEntry['needle'], 'steady' | undefined>

export const needleMeanings: Record<Needle, { text: string; source: string }> = {
  'regular drop': {
    text: 'Drops in time with the engine: one or more cylinders, not all. Ignition miss, a leaking valve or a head gasket; compression separates them.',
    source: 'US Army subcourse OD1001',
  },
  'irregular drop': {
    text: 'Drops now and then: a sticking valve or an ignition miss.',
    source: 'US Army subcourse OD1001; TM 10-3930-618-20',
  },
  'fast vibration': {
    text: 'Vibrates fast at idle: worn intake valve guides if it steadies with speed, weak valve springs if it grows.',
    source: 'US Army TM 9-4910-677-14&P; workshop vacuum charts',
  },
  'slow float': { text: 'Floats slowly: mixture.', source: 'US Army subcourse OD1001' },
  'falls away': {
    text: 'Normal at start, then falls while running: exhaust restriction; the faster the fall, the worse.',
    source: 'US Army subcourse OD1001; TM 10-3930-618-20',
  },
}

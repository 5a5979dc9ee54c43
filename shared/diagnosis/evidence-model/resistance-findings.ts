// What an ohmmeter says of lead, coil and plug of one cylinder. A good reading clears little: many faults show only hot or
// under high voltage.
import { after, type Finding, judged, mostOdds } from './finding.ts'
import { texts } from './sources.ts'

const cylinder = { of: 'cylinder', kind: 'ordered', most: mostOdds.seen } as const

export const resistanceFindings: readonly Finding[] = [
  {
    ...cylinder,
    id: 'lead resistance',
    outcomes: ['under 30 kohm', 'over or open'],
    sound: judged(0.985, 0.015),
    effects: { 'lead or boot': after(texts.sparks, 0.55, 0.45) },
  },
  {
    ...cylinder,
    id: 'coil windings',
    outcomes: ['as specified', 'outside or open'],
    sound: judged(0.985, 0.015),
    effects: { 'coil or driver': judged(0.65, 0.35), 'shared coil': judged(0.65, 0.35) },
  },
  {
    ...cylinder,
    id: 'plug insulation',
    outcomes: ['10 Mohm or more', 'less'],
    sound: judged(0.95, 0.05),
    effects: {
      'plug fouled': after(texts.insulation, 0.3, 0.7),
      'plug cracked': judged(0.5, 0.5),
      'plug too cold': judged(0.6, 0.4),
    },
  },
]

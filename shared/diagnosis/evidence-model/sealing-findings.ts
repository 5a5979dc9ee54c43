// How well a cylinder seals, and where it does not: compression, first puff, oil, leak-down and its paths.
import { after, type Finding, judged, mostOdds, usual } from './finding.ts'
import { texts } from './sources.ts'

const cylinder = { of: 'cylinder', most: mostOdds.seen } as const

/** Heard, or not heard by somebody who listened. */
const path = (id: string, sound: number, effects: Finding['effects']): Finding => ({
  ...cylinder,
  id,
  kind: 'ordered',
  outcomes: ['not heard', 'heard'],
  sound: judged(1 - sound, sound),
  effects,
})
const heard = (chance: number) => after(texts.leakDown, 1 - chance, chance)

export const sealingFindings: readonly Finding[] = [
  {
    ...cylinder,
    id: 'compression level',
    kind: 'ordered',
    outcomes: ['full', 'low', 'very low', 'none'],
    sound: judged(0.93, 0.06, 0.0085, 0.0015),
    effects: {
      'rings or bore': after(texts.compression, 0.12, 0.44, 0.39, 0.05),
      'intake valve': after(texts.compression, 0.12, 0.33, 0.4, 0.15),
      'exhaust valve': after(texts.compression, 0.1, 0.33, 0.42, 0.15),
      'valve lift lost': usual(0.33, 0.38, 0.18, 0.11),
      'piston holed': after(texts.overall, 0.01, 0.04, 0.35, 0.6),
      'head gasket to neighbour': after(texts.compression, 0.06, 0.34, 0.55, 0.05),
      'head gasket to coolant': after(texts.compression, 0.4, 0.42, 0.16, 0.02),
      'oil past rings': judged(0.7, 0.24, 0.05, 0.01),
      'injector leaking': usual(0.85, 0.12, 0.02, 0.01),
      'bank cam timing': usual(0.2, 0.5, 0.28, 0.02),
      'not modelled': judged(0.7, 0.2, 0.07, 0.03),
    },
  },
  {
    ...cylinder,
    id: 'first puff',
    kind: 'named',
    outcomes: ['like its sisters', 'slow to start'],
    sound: judged(0.85, 0.15),
    effects: {
      'rings or bore': after(texts.firstPuff, 0.3, 0.7),
      'intake valve': after(texts.firstPuff, 0.65, 0.35),
      'exhaust valve': after(texts.firstPuff, 0.65, 0.35),
      'head gasket to neighbour': judged(0.65, 0.35),
    },
  },
  {
    ...cylinder,
    id: 'rise with oil',
    kind: 'named',
    outcomes: ['as the oil alone', 'clearly more'],
    sound: judged(0.75, 0.25),
    effects: {
      'rings or bore': after(texts.compression, 0.15, 0.85),
      'oil past rings': judged(0.4, 0.6),
      'piston holed': judged(0.85, 0.15),
      'intake valve': after(texts.compression, 0.88, 0.12),
      'exhaust valve': after(texts.compression, 0.88, 0.12),
      'valve lift lost': judged(0.85, 0.15),
      'head gasket to neighbour': after(texts.compression, 0.9, 0.1),
      'head gasket to coolant': after(texts.compression, 0.88, 0.12),
    },
  },
  {
    ...cylinder,
    id: 'air lost',
    kind: 'ordered',
    outcomes: ['little', 'some', 'much'],
    sound: judged(0.93, 0.06, 0.01),
    effects: {
      'rings or bore': after(texts.leakDown, 0.1, 0.45, 0.45),
      'intake valve': after(texts.leakDown, 0.06, 0.34, 0.6),
      'exhaust valve': after(texts.leakDown, 0.06, 0.34, 0.6),
      'piston holed': after(texts.leakDown, 0.01, 0.04, 0.95),
      'head gasket to neighbour': after(texts.leakDown, 0.05, 0.3, 0.65),
      'head gasket to coolant': after(texts.leakDown, 0.2, 0.5, 0.3),
      'oil past rings': judged(0.7, 0.25, 0.05),
      'not modelled': judged(0.75, 0.17, 0.08),
    },
  },
  path('air at the intake', 0.02, { 'intake valve': heard(0.9) }),
  path('air at the exhaust', 0.02, { 'exhaust valve': heard(0.9) }),
  path('air at the oil filler', 0.3, {
    'rings or bore': heard(0.92),
    'piston holed': heard(0.95),
    'oil past rings': judged(0.4, 0.6),
  }),
  path('bubbles in the radiator', 0.01, {
    'head gasket to coolant': heard(0.85),
    'coolant ingress': judged(0.5, 0.5),
  }),
  path('air at the next plug hole', 0.01, { 'head gasket to neighbour': heard(0.9) }),
]

// How a cylinder works and how it is fired and fed: power balance, misfires, spark, injector, and parts moved about.
import { type CauseId } from './causes.ts'
import { after, type Finding, judged, mostOdds, usual } from './finding.ts'
import { texts } from './sources.ts'

const cylinder = { of: 'cylinder', most: mostOdds.seen } as const

/** What a fault does to the work of its cylinder; misfires are counted of the same faults. */
const lostWork: Finding['effects'] = {
  'plug fouled': usual(0.15, 0.45, 0.4),
  'plug worn': usual(0.55, 0.38, 0.07),
  'plug cracked': usual(0.2, 0.45, 0.35),
  'plug loose': usual(0.6, 0.35, 0.05),
  'plug too cold': judged(0.7, 0.25, 0.05),
  'lead or boot': usual(0.15, 0.4, 0.45),
  'coil or driver': usual(0.12, 0.33, 0.55),
  'injector restricted': usual(0.15, 0.5, 0.35),
  'injector leaking': usual(0.35, 0.5, 0.15),
  'runner air leak': usual(0.3, 0.55, 0.15),
  'rings or bore': usual(0.3, 0.55, 0.15),
  'intake valve': usual(0.12, 0.48, 0.4),
  'exhaust valve': usual(0.12, 0.48, 0.4),
  'valve lift lost': usual(0.12, 0.5, 0.38),
  'piston holed': usual(0.03, 0.2, 0.77),
  'head gasket to neighbour': usual(0.1, 0.45, 0.45),
  'head gasket to coolant': usual(0.4, 0.45, 0.15),
  'coolant ingress': usual(0.4, 0.45, 0.15),
  'oil past rings': judged(0.6, 0.35, 0.05),
  'oil past guides': judged(0.75, 0.22, 0.03),
  'plug-well seal': after(texts.well, 0.5, 0.35, 0.15),
  'not modelled': usual(0.3, 0.4, 0.3),
  'shared coil': usual(0.1, 0.4, 0.5),
  crossfire: after(texts.crossfire, 0.15, 0.45, 0.4),
  'bank air leak': usual(0.55, 0.4, 0.05),
  'bank cam timing': usual(0.45, 0.5, 0.05),
}

/** A part that was moved, or replaced by a good one: the fault goes with it if it is the cause, and stays otherwise. */
function moved(part: string, ofThePart: readonly CauseId[]): Finding {
  const follows = usual(0.93, 0.07)
  const stays = usual(0.03, 0.97)
  const others = (Object.keys(lostWork) as CauseId[]).filter(cause => !ofThePart.includes(cause))
  return {
    ...cylinder,
    id: `moved ${part}`,
    kind: 'named',
    outcomes: ['went with it', 'stayed'],
    sound: judged(0.06, 0.94),
    effects: Object.fromEntries([
      ...ofThePart.map(cause => [cause, follows]),
      ...others.map(cause => [cause, stays]),
    ]),
  }
}

export const workingFindings: readonly Finding[] = [
  {
    ...cylinder,
    id: 'work at idle',
    kind: 'ordered',
    outcomes: ['its share', 'weak', 'dead'],
    sound: judged(0.92, 0.07, 0.01),
    effects: lostWork,
  },
  {
    ...cylinder,
    id: 'misfires',
    kind: 'ordered',
    outcomes: ['few', 'some', 'many'],
    sound: judged(0.92, 0.07, 0.01),
    effects: lostWork,
  },
  {
    ...cylinder,
    id: 'spark',
    kind: 'ordered',
    outcomes: ['strong', 'weak', 'none'],
    sound: judged(0.95, 0.045, 0.005),
    effects: {
      'lead or boot': after(texts.sparks, 0.25, 0.4, 0.35),
      'coil or driver': after(texts.sparks, 0.12, 0.38, 0.5),
      'shared coil': after(texts.sparks, 0.12, 0.38, 0.5),
      crossfire: after(texts.crossfire, 0.5, 0.4, 0.1),
      'not modelled': judged(0.75, 0.15, 0.1),
    },
  },
  {
    ...cylinder,
    id: 'where the spark runs off',
    kind: 'named',
    outcomes: ['nowhere', 'boot or lead', 'plug insulator', 'coil', 'cap or rotor'],
    sound: judged(0.95, 0.02, 0.015, 0.01, 0.005),
    effects: {
      'lead or boot': after(texts.sparks, 0.4, 0.55, 0.03, 0.01, 0.01),
      'plug cracked': after(texts.sparks, 0.5, 0.06, 0.42, 0.01, 0.01),
      'plug-well seal': after(texts.well, 0.45, 0.35, 0.18, 0.01, 0.01),
      'coil or driver': after(texts.sparks, 0.65, 0.03, 0.01, 0.3, 0.01),
      crossfire: after(texts.crossfire, 0.4, 0.25, 0.01, 0.01, 0.33),
    },
  },
  {
    ...cylinder,
    id: 'injector sound',
    kind: 'ordered',
    outcomes: ['clear', 'faint', 'none'],
    sound: judged(0.95, 0.04, 0.01),
    effects: {
      'injector restricted': usual(0.6, 0.2, 0.2),
      'not modelled': judged(0.75, 0.1, 0.15),
    },
  },
  {
    ...cylinder,
    id: 'injector drop',
    kind: 'named',
    outcomes: ['less', 'as the others', 'more'],
    sound: judged(0.04, 0.92, 0.04),
    effects: {
      'injector restricted': after(texts.injectors, 0.8, 0.18, 0.02),
      'injector leaking': after(texts.injectors, 0.02, 0.38, 0.6),
    },
  },
  {
    ...cylinder,
    id: 'breathing when running',
    kind: 'named',
    outcomes: ['less', 'as the others', 'more'],
    sound: judged(0.05, 0.9, 0.05),
    effects: {
      'valve lift lost': usual(0.8, 0.18, 0.02),
      'rings or bore': usual(0.5, 0.45, 0.05),
      'intake valve': usual(0.6, 0.35, 0.05),
      'exhaust valve': usual(0.5, 0.35, 0.15),
      'piston holed': usual(0.85, 0.13, 0.02),
      'head gasket to neighbour': usual(0.6, 0.35, 0.05),
    },
  },
  moved('plug', ['plug fouled', 'plug worn', 'plug cracked', 'plug too cold']),
  moved('lead', ['lead or boot']),
  moved('coil', ['coil or driver']),
  moved('injector', ['injector restricted', 'injector leaking']),
]

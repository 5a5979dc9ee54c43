// What the plug of a cylinder looks like, as a person reads it. Dark is rich or a misfire from lean; pale is lean or modern
// fuel; rust red is a fuel additive or coolant. Corona stains and heat lines are no evidence and have no place here.
import { type Condition, conditions } from '../../plug/condition.ts'
import { after, type Chances, type Finding, judged, mostOdds } from './finding.ts'
import { texts } from './sources.ts'

const cylinder = { of: 'cylinder', most: mostOdds.seen } as const

const ofSoundPlugs: Readonly<Record<Condition, number>> = {
  lean: 0.1,
  normal: 0.76,
  rich: 0.03,
  'oil-wetted': 0.008,
  carbon: 0.035,
  ash: 0.012,
  overheated: 0.006,
  coolant: 0.002,
  'fuel-wet': 0.012,
  worn: 0.03,
  damaged: 0.005,
}

/** The named conditions so often; what is left falls as on sound plugs. */
function shows(named: Partial<Record<Condition, number>>, source: string = texts.plugs): Chances {
  const left = 1 - Object.values(named).reduce((sum, one) => sum + one, 0)
  const others = conditions.filter(one => named[one] === undefined)
  const share = left / others.reduce((sum, one) => sum + ofSoundPlugs[one], 0)
  return { chances: conditions.map(one => named[one] ?? ofSoundPlugs[one] * share), source }
}

const yes = (chance: number, source: string): Chances => after(source, 1 - chance, chance)

export const plugFindings: readonly Finding[] = [
  {
    ...cylinder,
    id: 'plug condition',
    kind: 'named',
    outcomes: conditions,
    sound: judged(...conditions.map(one => ofSoundPlugs[one])),
    effects: {
      'plug fouled': shows({ carbon: 0.4, rich: 0.15, 'fuel-wet': 0.2, 'oil-wetted': 0.08 }),
      'plug worn': shows({ worn: 0.85 }),
      'plug cracked': shows({ damaged: 0.65, 'fuel-wet': 0.08 }),
      'plug loose': shows({ overheated: 0.35, lean: 0.2 }),
      'plug too hot': shows({ overheated: 0.4, lean: 0.35 }),
      'plug too cold': shows({ carbon: 0.5, rich: 0.2 }),
      'lead or boot': shows({ 'fuel-wet': 0.28, carbon: 0.28 }),
      'coil or driver': shows({ 'fuel-wet': 0.33, carbon: 0.22 }),
      'injector restricted': shows({ lean: 0.6, overheated: 0.1, carbon: 0.08 }, texts.leanMisfire),
      'injector leaking': shows({ rich: 0.4, 'fuel-wet': 0.35, carbon: 0.15 }),
      'runner air leak': shows({ lean: 0.65, overheated: 0.08, carbon: 0.08 }, texts.leanMisfire),
      'rings or bore': shows({ 'oil-wetted': 0.3, carbon: 0.2 }),
      'intake valve': shows({ carbon: 0.2 }),
      'exhaust valve': shows({ carbon: 0.22, 'fuel-wet': 0.08 }),
      'valve lift lost': shows({ carbon: 0.25, 'fuel-wet': 0.2 }),
      'piston holed': shows({ damaged: 0.3, 'oil-wetted': 0.35, overheated: 0.15 }),
      'head gasket to neighbour': shows({ coolant: 0.15, carbon: 0.2 }),
      'head gasket to coolant': shows({ coolant: 0.5 }),
      'coolant ingress': shows({ coolant: 0.75 }),
      'oil past rings': shows({ 'oil-wetted': 0.62, ash: 0.12, carbon: 0.08 }),
      'oil past guides': shows({ 'oil-wetted': 0.5, ash: 0.27 }),
      'not modelled': shows({ carbon: 0.1, 'fuel-wet': 0.1, 'oil-wetted': 0.05 }, 'judgement'),
      'plenum air leak': shows({ lean: 0.5, carbon: 0.08 }, texts.leanMisfire),
      'low fuel delivery': shows({ lean: 0.55, overheated: 0.06, carbon: 0.06 }, texts.leanMisfire),
      'high fuel pressure': shows({ rich: 0.55, carbon: 0.25, 'fuel-wet': 0.08 }),
      'metered too little fuel': shows({ lean: 0.52, carbon: 0.06 }, texts.leanMisfire),
      'metered too much fuel': shows({ rich: 0.53, carbon: 0.25, 'fuel-wet': 0.06 }),
      'EGR or purge stuck open': shows({ rich: 0.2, carbon: 0.2, lean: 0.12 }, 'judgement'),
      'ignition timing': shows({ overheated: 0.3, carbon: 0.12 }),
      'worn evenly': shows({ 'oil-wetted': 0.35, ash: 0.28, carbon: 0.1 }),
      'oil carry-over': shows({ 'oil-wetted': 0.42, ash: 0.3 }),
      'thermostat or short trips': shows({ carbon: 0.5, rich: 0.2 }),
      'wrong plugs': shows({ overheated: 0.25, carbon: 0.25, lean: 0.1 }),
      detonation: shows({ overheated: 0.4, damaged: 0.3 }),
      'photo light wrong': shows({ lean: 0.3, rich: 0.2 }, 'common practice'),
      'engine not modelled': shows({ lean: 0.13, rich: 0.1, carbon: 0.1 }, 'judgement'),
      'shared coil': shows({ 'fuel-wet': 0.33, carbon: 0.22 }),
      crossfire: shows({ carbon: 0.15, 'fuel-wet': 0.1 }),
      'bank air leak': shows({ lean: 0.5, carbon: 0.08 }, texts.leanMisfire),
    },
  },
  {
    ...cylinder,
    id: 'insulator',
    kind: 'named',
    outcomes: ['whole', 'cracked', 'blistered', 'spark track'],
    sound: judged(0.975, 0.008, 0.005, 0.012),
    effects: {
      'plug cracked': after(texts.plugs, 0.28, 0.65, 0.02, 0.05),
      'plug-well seal': after(texts.well, 0.72, 0.01, 0.01, 0.26),
      'lead or boot': after(texts.sparks, 0.72, 0.01, 0.01, 0.26),
      'plug too hot': after(texts.plugs, 0.7, 0.04, 0.25, 0.01),
      'plug loose': after(texts.plugs, 0.78, 0.03, 0.18, 0.01),
      'ignition timing': after(texts.plugs, 0.8, 0.05, 0.14, 0.01),
      detonation: after(texts.plugs, 0.48, 0.3, 0.2, 0.02),
      'wrong plugs': after(texts.plugs, 0.83, 0.03, 0.12, 0.02),
    },
  },
  {
    ...cylinder,
    id: 'electrodes',
    kind: 'named',
    outcomes: ['as they should be', 'worn out', 'melted or bent'],
    sound: judged(0.955, 0.04, 0.005),
    effects: {
      'plug worn': after(texts.plugs, 0.15, 0.83, 0.02),
      'plug too hot': after(texts.plugs, 0.55, 0.2, 0.25),
      'piston holed': judged(0.55, 0.05, 0.4),
      detonation: after(texts.plugs, 0.5, 0.2, 0.3),
      'ignition timing': after(texts.plugs, 0.7, 0.2, 0.1),
    },
  },
  {
    ...cylinder,
    id: 'oil in the well',
    kind: 'ordered',
    outcomes: ['no', 'yes'],
    sound: judged(0.992, 0.008),
    effects: { 'plug-well seal': yes(0.93, texts.well) },
  },
  {
    ...cylinder,
    id: 'rust red',
    kind: 'ordered',
    outcomes: ['no', 'yes'],
    sound: judged(0.94, 0.06),
    effects: {
      'coolant ingress': yes(0.15, texts.rust),
      'head gasket to coolant': yes(0.12, texts.rust),
    },
  },
  {
    ...cylinder,
    id: 'specks or metal on the nose',
    kind: 'ordered',
    outcomes: ['no', 'yes'],
    sound: judged(0.985, 0.015),
    effects: {
      detonation: yes(0.6, texts.plugs),
      'ignition timing': yes(0.25, texts.plugs),
      'piston holed': judged(0.6, 0.4),
      'plug too hot': yes(0.3, texts.plugs),
      'plug loose': yes(0.2, texts.plugs),
    },
  },
]

// What is seen of the whole engine: level of compression, vacuum, fuel, trims, and how the tests were set up.
import { needleBehaviours } from '../../gauges/vacuum-entry.ts'
import { after, type Chances, type Finding, judged, mostOdds, usual } from './finding.ts'
import { texts } from './sources.ts'

const engine = { of: 'engine', most: mostOdds.seen } as const

type Needle = (typeof needleBehaviours)[number]
const soundNeedle: Readonly<Record<Needle, number>> = {
  steady: 0.6,
  'small flicker': 0.1,
  'regular drop': 0.12,
  'sharp deep drop': 0.01,
  'irregular drop': 0.05,
  'fast vibration': 0.03,
  'slow float': 0.03,
  'falls away': 0.01,
  'sweeps grow with speed': 0.01,
  'sweeps shrink with speed': 0.01,
  'steadies with speed': 0.02,
  'slow return': 0.01,
}
function moves(named: Partial<Record<Needle, number>>): Chances {
  const left = 1 - Object.values(named).reduce((sum, one) => sum + one, 0)
  const others = needleBehaviours.filter(one => named[one] === undefined)
  const share = left / others.reduce((sum, one) => sum + soundNeedle[one], 0)
  return {
    chances: needleBehaviours.map(one => named[one] ?? soundNeedle[one] * share),
    source: texts.needle,
  }
}

/** A setting that spoils a test, read off what was noted of it. */
const setUp = (id: string, sound: number, effects: Finding['effects']): Finding => ({
  ...engine,
  id,
  kind: 'ordered',
  outcomes: ['no', 'yes'],
  sound: judged(1 - sound, sound),
  effects,
})

const trims: Finding['effects'] = {
  'low fuel delivery': after(texts.trims, 0.03, 0.22, 0.75),
  'high fuel pressure': after(texts.trims, 0.8, 0.17, 0.03),
  'metered too little fuel': after(texts.trims, 0.03, 0.22, 0.75),
  'metered too much fuel': after(texts.trims, 0.8, 0.17, 0.03),
  'EGR or purge stuck open': after(texts.trims, 0.5, 0.3, 0.2),
  'bank air leak': after(texts.trims, 0.05, 0.5, 0.45),
  'engine not modelled': judged(0.2, 0.55, 0.25),
}

export const engineFindings: readonly Finding[] = [
  {
    ...engine,
    id: 'compression of the best',
    kind: 'ordered',
    outcomes: ['usual', 'low', 'very low'],
    sound: judged(0.94, 0.05, 0.01),
    effects: {
      'cam timing': after(texts.overall, 0.15, 0.5, 0.35),
      'worn evenly': after(texts.overall, 0.25, 0.55, 0.2),
      'weak battery': usual(0.3, 0.5, 0.2),
      'throttle shut': after(texts.overall, 0.3, 0.5, 0.2),
      'leaking gauge': usual(0.3, 0.45, 0.25),
      'cold engine': usual(0.75, 0.22, 0.03),
      'engine not modelled': judged(0.75, 0.17, 0.08),
    },
  },
  {
    ...engine,
    id: 'idle vacuum',
    kind: 'ordered',
    outcomes: ['in band', 'low', 'very low'],
    sound: judged(0.87, 0.11, 0.02),
    effects: {
      'plenum air leak': after(texts.needle, 0.2, 0.5, 0.3),
      'cam timing': after(texts.needle, 0.1, 0.45, 0.45),
      'ignition timing': after(texts.needle, 0.25, 0.65, 0.1),
      'worn evenly': after(texts.needle, 0.3, 0.55, 0.15),
      'EGR or purge stuck open': after(texts.pump, 0.3, 0.5, 0.2),
      'exhaust restriction': after(texts.needle, 0.6, 0.3, 0.1),
      'idle control masking': usual(0.87, 0.11, 0.02),
      'bank air leak': after(texts.needle, 0.35, 0.5, 0.15),
      'bank cam timing': after(texts.needle, 0.25, 0.5, 0.25),
      'engine not modelled': judged(0.6, 0.3, 0.1),
    },
  },
  {
    ...engine,
    id: 'needle at idle',
    kind: 'named',
    outcomes: needleBehaviours,
    sound: judged(...needleBehaviours.map(one => soundNeedle[one])),
    effects: {
      'plenum air leak': moves({ steady: 0.55, 'sweeps shrink with speed': 0.15 }),
      'cam timing': moves({ steady: 0.65 }),
      'ignition timing': moves({ steady: 0.6, 'steadies with speed': 0.12 }),
      'metered too little fuel': moves({ 'irregular drop': 0.2, 'slow float': 0.2 }),
      'metered too much fuel': moves({ 'slow float': 0.35 }),
      'high fuel pressure': moves({ 'slow float': 0.35 }),
      'low fuel delivery': moves({ 'irregular drop': 0.2, 'slow float': 0.2 }),
      'exhaust restriction': moves({ 'falls away': 0.45, 'slow return': 0.25 }),
      'wrong plugs': moves({ 'small flicker': 0.25, 'irregular drop': 0.12 }),
      'shared coil': moves({ 'regular drop': 0.45, 'irregular drop': 0.2 }),
      crossfire: moves({ 'irregular drop': 0.35, 'regular drop': 0.2 }),
      'bank air leak': moves({ steady: 0.45, 'sweeps shrink with speed': 0.15 }),
    },
  },
  {
    ...engine,
    id: 'vacuum while 2500 rpm is held',
    kind: 'ordered',
    outcomes: ['holds or rises', 'falls slowly', 'falls toward zero'],
    sound: judged(0.94, 0.05, 0.01),
    effects: {
      'exhaust restriction': after(texts.pump, 0.12, 0.43, 0.45),
      'EGR or purge stuck open': after(texts.pump, 0.5, 0.2, 0.3),
      'engine not modelled': judged(0.8, 0.15, 0.05),
    },
  },
  {
    ...engine,
    id: 'rebound after a snap',
    kind: 'ordered',
    outcomes: ['above idle', 'small'],
    sound: judged(0.92, 0.08),
    effects: {
      'worn evenly': after(texts.needle, 0.3, 0.7),
      'exhaust restriction': after(texts.needle, 0.35, 0.65),
      'plenum air leak': judged(0.7, 0.3),
      'engine not modelled': judged(0.75, 0.25),
    },
  },
  {
    ...engine,
    id: 'trim at idle',
    kind: 'named',
    outcomes: ['negative', 'near zero', 'positive'],
    sound: judged(0.07, 0.83, 0.1),
    effects: {
      ...trims,
      'plenum air leak': after(texts.trims, 0.01, 0.12, 0.87),
      'exhaust restriction': judged(0.15, 0.7, 0.15),
    },
  },
  {
    ...engine,
    id: 'trim at 2500 rpm',
    kind: 'named',
    outcomes: ['negative', 'near zero', 'positive'],
    sound: judged(0.06, 0.88, 0.06),
    effects: {
      ...trims,
      'plenum air leak': after(texts.trims, 0.03, 0.77, 0.2),
      'low fuel delivery': after(texts.trims, 0.02, 0.13, 0.85),
      'bank air leak': after(texts.trims, 0.03, 0.77, 0.2),
    },
  },
  {
    ...engine,
    id: 'fuel pressure',
    kind: 'named',
    outcomes: ['low', 'as specified', 'high'],
    sound: judged(0.03, 0.94, 0.03),
    effects: {
      'low fuel delivery': usual(0.78, 0.2, 0.02),
      'high fuel pressure': usual(0.02, 0.18, 0.8),
      'engine not modelled': judged(0.06, 0.88, 0.06),
    },
  },
  setUp('battery low while cranking', 0.05, { 'weak battery': judged(0.1, 0.9) }),
  setUp('gauge fell back', 0.03, { 'leaking gauge': judged(0.2, 0.8) }),
  setUp('throttle closed while cranking', 0.02, { 'throttle shut': judged(0.05, 0.95) }),
  setUp('engine cold', 0.1, { 'cold engine': judged(0.02, 0.98) }),
  setUp('idle control active', 0.3, { 'idle control masking': judged(0.03, 0.97) }),
  setUp('no cut-out shows', 0.02, { 'idle control masking': usual(0.4, 0.6) }),
]

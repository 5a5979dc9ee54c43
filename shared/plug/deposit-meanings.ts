// What a deposit at the firing end means, by kind and place.
import type { DepositKind, DepositPlace } from './condition.ts'
import { conditionMeanings } from './condition-meanings.ts'
import { type Meaning, plugSources as s } from './meaning.ts'
import { outsideMeaning } from './well-meanings.ts'

const oilOnRim: Meaning = {
  state: 'watch',
  of: 'cylinder',
  text: 'Oil on the shell rim only: it passed the threads or gasket, ran in on removal, or begins to reach the nose.',
  plain: 'There is a little oil at the edge of the plug.',
  next: 'Was the plug loose? Look into the well and at the nose again.',
  source: s.practice,
}

const inChamber: Record<DepositKind, Meaning> = {
  soot: {
    state: 'watch',
    of: 'cylinder',
    text: 'Soot: rich, cold or misfiring, a lean misfire included; idling before shutdown leaves it too.',
    plain: 'There is soot on the plug.',
    next: 'Compare with the mates; spark, fuel trims.',
    source: `${s.fire}; ${s.faaHandbook}; ${s.practice}`,
  },
  'wet oil': conditionMeanings['oil-wetted'],
  'baked oil': {
    state: 'watch',
    of: 'cylinder',
    text: 'Baked oil: oil has been getting into the chamber.',
    plain: 'Burned-on oil lies on the plug.',
    next: 'Look for how oil enters: rings, guides, seals; compression dry and wet.',
    source: `${s.dodge}; ${s.practice}`,
  },
  'powder ash': {
    state: 'sound',
    of: 'cylinder',
    text: 'Powder ash from oil or fuel additives: harmless while powdery.',
    plain: 'A little harmless residue lies on the plug.',
    next: '',
    source: `${s.navy}; ${s.gm}`,
  },
  glaze: {
    state: 'fault',
    of: 'plug',
    text: 'Glaze: melted ash that conducts when hot and shorts the plug.',
    plain: 'A glassy coating shorts this plug when hot.',
    next: 'Renew the plug; find the ash: oil, fuel.',
    source: s.navy,
  },
  'coolant crust': conditionMeanings.coolant,
  lead: {
    state: 'watch',
    of: 'plug',
    text: 'Lead deposits, from leaded fuel.',
    plain: 'Residue of leaded fuel lies on the plug.',
    next: 'Ask which fuel; clean or renew.',
    source: `${s.army}; aviation plug pages`,
  },
  specks: {
    state: 'fault',
    of: 'cylinder',
    text: 'Specks on the insulator: detonation or pre-ignition.',
    plain: 'Specks on the plug show that the engine has been knocking.',
    next: 'Timing, octane, carbon in the chamber, cooling, mixture, before the engine is loaded again.',
    source: `enthusiast plug-reading pages; ${s.practice}`,
  },
  'metal spray': {
    state: 'fault',
    of: 'cylinder',
    text: 'Metal spray: on one plug usually the piston of that cylinder, even on all plugs something upstream.',
    plain: 'There are traces of metal on the plug.',
    next: 'Do not run it: look into the cylinder.',
    source: s.faa,
  },
  bridge: {
    state: 'fault',
    of: 'plug',
    text: 'The gap is bridged by deposits: no spark.',
    plain: 'Deposits have closed the gap, so this plug cannot spark.',
    next: 'Renew; find the oil or carbon.',
    source: `${s.army}; Lincoln spark plug page (1998)`,
  },
}

/** What one noted deposit means. */
export function depositMeaning(kind: DepositKind, place: DepositPlace): Meaning {
  if (place === 'outer body' || place === 'well') return outsideMeaning(kind, place)
  if (kind === 'wet oil' && place === 'shell rim') return oilOnRim
  return inChamber[kind]
}

// What the remaining details mean: insulator colour, wetness, electrode wear, insulator damage.
import type { ElectrodeWear, InsulatorColour, InsulatorDamage, Wetness } from './condition.ts'
import { conditionMeanings } from './condition-meanings.ts'
import { type Meaning, plugSources as s } from './meaning.ts'

const fair = (text: string): Meaning => ({ ...conditionMeanings.normal, text })
const dark = (colour: string): Meaning => ({
  ...conditionMeanings.rich,
  text: `${colour} insulator: rich, too cold a plug, or a misfire, even a lean one.`,
})

/** Colour by itself, when nobody has named the condition: it is the weaker sign. */
export const colourMeanings: Record<InsulatorColour, Meaning> = {
  'chalk white': {
    ...conditionMeanings.lean,
    text: 'Chalk white insulator: lean, hot, or a nearly new plug.',
  },
  'pale grey': fair('Pale grey insulator: a healthy plug may be pale on modern fuel.'),
  'light tan': fair('Light tan insulator: right heat, normal burning.'),
  tan: fair('Tan insulator: right heat, normal burning.'),
  brown: fair('Brown insulator: right heat, normal burning.'),
  'dark brown': dark('Dark brown'),
  'dark grey': dark('Dark grey'),
  black: dark('Black'),
  'rust red': {
    state: 'watch',
    of: 'cylinder',
    text: 'Rust red insulator: a fuel additive does this, harmless, mostly on all plugs; so can coolant. Colour cannot tell them apart.',
    plain: 'The plug is rust red: a harmless fuel additive or a coolant leak can do that.',
    next: 'Ask which fuel, and look at the coolant level.',
    source: `${s.dodge}; ${s.table}`,
  },
  orange: {
    state: 'watch',
    of: 'cylinder',
    text: 'Orange insulator: antifreeze in the chamber can do this, fuel additives too.',
    plain: 'The plug is orange: coolant or a fuel additive can do that.',
    next: 'Coolant level, pressure test; ask which fuel.',
    source: `${s.table}; ${s.dodge}`,
  },
  yellow: {
    state: 'watch',
    of: 'cylinder',
    text: 'Yellow insulator: ash of oil or fuel, lead, or silicon from sealant or dust.',
    plain: 'The plug is yellow from residue of oil, fuel or sealant.',
    next: 'Ask which fuel and what was sealed lately; oil consumption.',
    source: `${s.navy}; ${s.army}; ${s.table}`,
  },
}

/** Colours that ask a question whatever condition was tagged. */
export const askingColours: ReadonlySet<InsulatorColour> = new Set(['rust red', 'orange', 'yellow'])

/** Wetness by itself, when nobody has said what it is wet with. */
export const wetnessMeanings: Partial<Record<Wetness, Meaning>> = {
  damp: {
    state: 'watch',
    of: 'cylinder',
    text: 'Damp, and nobody has said with what: oil stays wet, fuel smells and dries quickly, coolant smells sweet.',
    plain: 'The plug is damp; with what is not noted.',
    next: 'Smell it, let it stand, and tag what it is.',
    source: `${s.makers}; ${s.practice}`,
  },
  wet: {
    state: 'watch',
    of: 'cylinder',
    text: 'Wet, and nobody has said with what: oil stays wet, fuel smells and dries quickly, coolant smells sweet.',
    plain: 'The plug is wet; with what is not noted.',
    next: 'Smell it, let it stand, and tag what it is.',
    source: `${s.makers}; ${s.practice}`,
  },
}

export const wearMeanings: Partial<Record<ElectrodeWear, Meaning>> = {
  rounded: {
    state: 'sound',
    of: 'plug',
    text: 'Rounded electrodes: ordinary wear; the wider gap needs more voltage.',
    plain: 'The plug shows ordinary wear.',
    next: 'Measure the gap; renew the set when due.',
    source: `${s.makers}; ${s.faa}`,
  },
  'worn out': conditionMeanings.worn,
  melted: {
    state: 'fault',
    of: 'cylinder',
    text: 'Melted electrodes: pre-ignition, as cause or result.',
    plain: 'The tip of the plug has melted.',
    next: 'Heat range, timing, cooling, mixture, before a new plug goes in.',
    source: `${s.faa}; Lincoln spark plug page (1998)`,
  },
  bent: {
    state: 'fault',
    of: 'cylinder',
    text: 'Bent or missing strap: struck by the piston or a foreign body, the wrong plug, or dropped before fitting.',
    plain: 'The tip of the plug is bent.',
    next: 'Plug reach, then a look into the cylinder.',
    source: `${s.charts}; ${s.practice}`,
  },
}

export const damageMeanings: Partial<Record<InsulatorDamage, Meaning>> = {
  'cracked nose': {
    state: 'fault',
    of: 'plug',
    text: 'Cracked nose: careless gapping, too hot a plug, detonation or thermal shock.',
    plain: 'The insulator of the plug is cracked.',
    next: 'Renew; timing, octane, heat range.',
    source: `${s.faa}; ${s.gm}`,
  },
  'broken nose': {
    state: 'fault',
    of: 'plug',
    text: 'Broken nose: a loose piece behind the strap glows and pre-ignites.',
    plain: 'A piece of the insulator has broken off.',
    next: 'Find the pieces; timing, octane, heat range.',
    source: `${s.faa}; ${s.gm}`,
  },
  blistered: {
    state: 'fault',
    of: 'cylinder',
    text: 'Blistered insulator: severe overheating.',
    plain: 'The insulator is blistered from heat.',
    next: 'Cooling, timing, heat range, pre-ignition.',
    source: `${s.fire}; ${s.navy}`,
  },
  'cracked upper': {
    state: 'fault',
    of: 'plug',
    text: 'Cracked upper insulator: poor wrench or a knock; fails once damp.',
    plain: 'The upper insulator of the plug is cracked.',
    next: 'Renew; straight socket.',
    source: s.gm,
  },
  'flashover track': {
    state: 'fault',
    of: 'plug',
    text: 'Sharp black track from terminal to shell: flashover outside the plug, with a burn in the boot to match.',
    plain: 'The spark has jumped outside the plug.',
    next: 'Renew plug and boot or coil.',
    source: `${s.makers}; technical articles on plug wires`,
  },
}

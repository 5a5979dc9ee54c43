// What a tag on a plug means: how worrying it is, in plain words, and what to check next. Ambiguous signs stay ambiguous.
import type { Reading } from '../job/tray-schema.ts'
import type { Condition, DepositKind, ElectrodeWear, InsulatorColour, InsulatorDamage } from './condition.ts'

export type PlugState = 'sound' | 'watch' | 'fault'
export type Meaning = { state: PlugState; text: string; next: string; source: string }

const practice = 'common practice'
const chart = 'US Army TM 5-4210-230-14&P-1 and TM 10-3930-653-14&P plug tables'

export const conditionMeanings: Record<Condition, Meaning> = {
  normal: {
    state: 'sound',
    text: 'Tan or light grey, little wear: right heat and normal burning.',
    next: 'None.',
    source: chart,
  },
  lean: {
    state: 'watch',
    text: 'Pale: lean or hot. Modern fuel leaves little colour, so compare with the mates.',
    next: 'Trims, intake leak, fuel pressure, timing, plug heat range.',
    source: practice,
  },
  rich: {
    state: 'watch',
    text: 'Too dark: rich or cold. A mixture so lean that it misfires leaves soot too.',
    next: 'Trims, injector, air filter, coolant sensor, heat range.',
    source: `${practice}; misfire from lean: FAA-H-8083-32`,
  },
  'oil-wetted': {
    state: 'fault',
    text: 'Wet black oil on the firing nose: oil in the chamber, from rings, bore, valve guide or seal.',
    next: 'Dry and wet compression, then leak-down, on this cylinder.',
    source: 'US Army TM 10-3930-653-14&P; vehicle maker plug pages (1998)',
  },
  carbon: {
    state: 'fault',
    text: 'Dry fluffy soot. One plug: sticking valve, bad lead or weak spark there. All: rich, cold plugs, short trips.',
    next: 'Swap lead or coil, spark test, compression; for all plugs trims and air filter.',
    source: chart,
  },
  ash: {
    state: 'watch',
    text: 'Ash from oil or fuel additives; harmless while it is powder.',
    next: 'Oil consumption: rings, guides, breather.',
    source: 'US Navy NAVEDTRA 14273; vehicle maker plug pages (1998)',
  },
  overheated: {
    state: 'fault',
    text: 'Blistered or white with specks: overheated.',
    next: 'Cooling, ignition timing, plug torque, heat range, fuel pressure.',
    source: 'US Army TM 10-3930-653-14&P and TM 10-3930-633-12; US Navy NAVEDTRA 14273',
  },
  coolant: {
    state: 'fault',
    text: 'Coolant residue, or one plug steam-cleaned: coolant is getting into the chamber.',
    next: 'Pressure test, combustion gas in the coolant, the neighbouring cylinder.',
    source: practice,
  },
  'fuel-wet': {
    state: 'fault',
    text: 'Wet with fuel that dries quickly: it did not burn. No spark, or flooding.',
    next: 'Spark test, injector leak.',
    source: `plug maker diagnosis page; ${practice}`,
  },
  worn: {
    state: 'watch',
    text: 'Electrodes rounded, gap wide: worn out.',
    next: 'Renew the set.',
    source: 'FAA AC 43.13-1B',
  },
  damaged: {
    state: 'fault',
    text: 'Damaged plug.',
    next: 'Find what hit, cracked or melted it before a new plug goes in.',
    source: 'FAA AC 43.13-1B; vehicle maker plug pages',
  },
}

export const oilInWellMeaning: Meaning = {
  state: 'watch',
  text: 'Oil in the plug well: tube seal or rocker-cover gasket, not the cylinder. It tracks the boot and can misfire by itself.',
  next: 'Renew the tube seal, clean the well, look at the boot.',
  source: `${practice}; vehicle maker plug pages`,
}

const colourMeanings: Partial<Record<InsulatorColour, Meaning>> = {
  'rust red': {
    state: 'watch',
    text: 'Rust red: a fuel additive does this to all plugs and is harmless; so can coolant.',
    next: 'Ask which fuel, and look at the coolant level.',
    source: 'vehicle maker plug pages (1998); stationary-engine plug table (2016)',
  },
  orange: {
    state: 'watch',
    text: 'Orange: antifreeze in the chamber can do this.',
    next: 'Coolant level, pressure test.',
    source: 'stationary-engine plug table (2016)',
  },
}

const wearMeanings: Partial<Record<ElectrodeWear, Meaning>> = {
  'worn out': conditionMeanings.worn,
  melted: {
    state: 'fault',
    text: 'Melted electrodes: pre-ignition, as cause or result.',
    next: 'Heat range, timing, cooling, mixture.',
    source: 'FAA AC 43.13-1B',
  },
  bent: {
    state: 'fault',
    text: 'Bent or missing strap: struck by the piston or a foreign body, or the wrong plug.',
    next: 'Plug reach, then a look into the cylinder.',
    source: 'reproduced plug charts',
  },
}

const damageMeanings: Partial<Record<InsulatorDamage, Meaning>> = {
  'cracked nose': {
    state: 'fault',
    text: 'Cracked nose: careless gapping, too hot a plug, detonation.',
    next: 'Renew; timing and octane.',
    source: 'FAA AC 43.13-1B; vehicle maker plug pages (2006)',
  },
  'broken nose': {
    state: 'fault',
    text: 'Broken nose: loose pieces glow and pre-ignite.',
    next: 'Find the pieces; timing and octane.',
    source: 'FAA AC 43.13-1B',
  },
  blistered: {
    state: 'fault',
    text: 'Blistered insulator: severe overheating.',
    next: 'Cooling, timing, heat range.',
    source: 'US Army TM 5-4210-230-14&P-1; NAVEDTRA 14273',
  },
  'cracked upper': {
    state: 'fault',
    text: 'Cracked upper insulator: fails once damp.',
    next: 'Renew; straight wrench.',
    source: 'vehicle maker plug pages (2006)',
  },
  'flashover track': {
    state: 'fault',
    text: 'Sharp black track: flashover outside the plug.',
    next: 'Renew plug and boot or coil.',
    source: 'plug maker catalogue note',
  },
}

const depositMeanings: Partial<Record<DepositKind, Meaning>> = {
  glaze: {
    state: 'watch',
    text: 'Glaze: melted ash that conducts when hot.',
    next: 'Renew the plug.',
    source: 'US Navy NAVEDTRA 14273',
  },
  'coolant crust': conditionMeanings.coolant,
  specks: {
    state: 'watch',
    text: 'Specks on the insulator: detonation or pre-ignition.',
    next: 'Timing, octane, carbon, cooling.',
    source: practice,
  },
  'metal spray': {
    state: 'fault',
    text: 'Metal spray: on one plug usually the piston of that cylinder.',
    next: 'Look into the cylinder, leak-down.',
    source: 'FAA AC 43.13-1B',
  },
  bridge: {
    state: 'fault',
    text: 'The gap is bridged.',
    next: 'Oil or carbon source; renew.',
    source: 'US Army TM 10-3930-633-12',
  },
}

/** Deposits where oil stands outside the chamber are the well's finding, not the cylinder's. */
const outside = new Set(['outer body', 'well'])

/** Everything that a person's reading of one plug says, worst first not guaranteed. */
export function meaningsOf(reading: Reading): Meaning[] {
  const { condition, details } = reading
  const deposits = (details.deposits ?? []).flatMap(({ kind, place }) => {
    if (outside.has(place)) return kind === 'wet oil' && !details.oilInWell ? [oilInWellMeaning] : []
    if (kind === 'wet oil' && place === 'nose') return [conditionMeanings['oil-wetted']]
    return [depositMeanings[kind]]
  })
  const all = [
    condition && conditionMeanings[condition],
    details.oilInWell ? oilInWellMeaning : undefined,
    details.insulatorColour && colourMeanings[details.insulatorColour],
    details.electrodeWear && wearMeanings[details.electrodeWear],
    details.insulatorDamage && damageMeanings[details.insulatorDamage],
    ...deposits,
  ].filter(meaning => meaning !== undefined)
  return [...new Map(all.map(meaning => [meaning.text, meaning])).values()]
}

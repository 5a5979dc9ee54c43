// Findings outside the chamber: the plug well and the outer body. They are of the seal above, never of the cylinder.
import type { DepositKind } from './condition.ts'
import { type Meaning, plugSources as s } from './meaning.ts'

/** At most "watch": oil in the well alone says nothing of rings or guides. */
export const oilInWellMeaning: Meaning = {
  state: 'watch',
  of: 'well',
  text: 'Oil in the plug well: tube seal or rocker-cover gasket, not the cylinder. It tracks the boot and can misfire by itself.',
  plain:
    'Oil has leaked into the plug well from a seal above it. That is not a fault of the cylinder itself.',
  next: 'Renew the tube seal, clean the well, look at the boot.',
  source: `${s.practice}; ${s.gm}`,
}

export const oilOutsideMeaning: Meaning = {
  ...oilInWellMeaning,
  text: 'Oil on the outer body: tube seal, rocker-cover gasket or a spill on removal, not the cylinder.',
  plain:
    'There is oil on the outside of the plug, from a seal above it. That is not a fault of the cylinder itself.',
  next: 'Look into the well and at the boot; renew the tube seal if it is wet.',
}

/** An oil tag whose deposits all lie outside contradicts itself. */
export const oilTagOutsideMeaning: Meaning = {
  state: 'watch',
  of: 'well',
  text: 'Tagged oil-wetted, but oil is noted only on the outer body or in the well: oil-wetted means oil on the nose.',
  plain:
    'Oil was noted on the outside of the plug; whether any is on the firing end is to be looked at again.',
  next: 'Look at the nose again and correct the tag.',
  source: s.practice,
}

const streaks: Meaning = {
  state: 'watch',
  of: 'plug',
  text: 'Black streaks on the outer body: gas leaking past a loose plug or its seal, or flashover. A brown stain just above the shell is corona and harmless.',
  plain: 'There are dark streaks on the outside of the plug.',
  next: 'Plug torque and seat; look in the dark for arcing.',
  source: `${s.makers}; ${s.practice}`,
}

const coolantOutside: Meaning = {
  state: 'watch',
  of: 'well',
  text: 'Coolant residue outside the chamber: a leak from above into the well.',
  plain: 'Coolant has dried on the outside of the plug.',
  next: 'Find the leak above the well; clean and dry well and boot.',
  source: s.practice,
}

const otherOutside: Meaning = {
  state: 'watch',
  of: 'well',
  text: 'Deposit outside the chamber: it says nothing of the cylinder, but dirt and moisture in the well lower the voltage it can hold.',
  plain: 'There is dirt on the outside of the plug.',
  next: 'Clean the well before the plug comes out; look at the boot.',
  source: `${s.faa}; ${s.practice}`,
}

/** What a deposit on the outer body or in the well means. */
export function outsideMeaning(kind: DepositKind, place: 'outer body' | 'well'): Meaning {
  if (kind === 'wet oil' || kind === 'baked oil')
    return place === 'well' ? oilInWellMeaning : oilOutsideMeaning
  if (kind === 'coolant crust') return coolantOutside
  return kind === 'soot' && place === 'outer body' ? streaks : otherOutside
}

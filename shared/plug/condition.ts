// The vocabulary of plug reading: one primary condition, and the details beside it. No zod: the page uses these lists.

/** The first five are what a plug usually is; the rest are rarer or come on top. Trade terms. */
export const conditions = [
  'lean',
  'normal',
  'rich',
  'oil-wetted',
  'carbon',
  'ash',
  'overheated',
  'coolant',
  'fuel-wet',
  'worn',
  'damaged',
] as const
export type Condition = (typeof conditions)[number]

export const insulatorColours = [
  'chalk white',
  'pale grey',
  'light tan',
  'tan',
  'brown',
  'dark brown',
  'dark grey',
  'black',
  'rust red',
  'orange',
  'yellow',
] as const
export type InsulatorColour = (typeof insulatorColours)[number]

export const depositKinds = [
  'soot',
  'wet oil',
  'baked oil',
  'powder ash',
  'glaze',
  'coolant crust',
  'lead',
  'specks',
  'metal spray',
  'bridge',
] as const
export type DepositKind = (typeof depositKinds)[number]

/** Oil on the nose and oil in the well are different findings, so the place is never left out. */
export const depositPlaces = ['nose', 'one side', 'shell rim', 'strap', 'outer body', 'well'] as const
export type DepositPlace = (typeof depositPlaces)[number]

export const wetnessLevels = ['dry', 'damp', 'wet'] as const
export type Wetness = (typeof wetnessLevels)[number]

export const electrodeWearLevels = ['sharp', 'rounded', 'worn out', 'melted', 'bent'] as const
export type ElectrodeWear = (typeof electrodeWearLevels)[number]

export const insulatorDamageKinds = [
  'none',
  'cracked nose',
  'broken nose',
  'blistered',
  'cracked upper',
  'flashover track',
] as const
export type InsulatorDamage = (typeof insulatorDamageKinds)[number]

export const shotKinds = ['end-on', 'side', 'whole plug', 'plug well', 'other'] as const
export type ShotKind = (typeof shotKinds)[number]

// How tight a plug goes back in where the vehicle's own figure is not to hand. Dry, clean threads, cold engine.

export const seats = ['gasket', 'conical'] as const
export const heads = ['aluminium', 'cast iron'] as const
export const torqueThreads = ['M8', 'M10', 'M12', 'M14', 'M18'] as const
export type Seat = (typeof seats)[number]
export type Head = (typeof heads)[number]
export type TorqueThread = (typeof torqueThreads)[number]

/** In lbf ft, as published. */
type Range = readonly [least: number, most: number]

export const torqueSource = 'installation torque chart published by a plug manufacturer, in lbf ft'

const gasket: Readonly<Record<TorqueThread, { readonly [H in Head]?: Range }>> = {
  M18: { aluminium: [25.3, 32.5], 'cast iron': [25.3, 32.5] },
  M14: { aluminium: [18, 21.6], 'cast iron': [18, 25.3] },
  M12: { aluminium: [10.8, 14.5], 'cast iron': [10.8, 18] },
  M10: { aluminium: [7.2, 8.7], 'cast iron': [7.2, 10.8] },
  M8: { aluminium: [5.8, 7.2] },
}
const conical: Readonly<Partial<Record<TorqueThread, { readonly [H in Head]?: Range }>>> = {
  M18: { aluminium: [14.5, 21.6], 'cast iron': [14.5, 21.6] },
  M14: { aluminium: [7.2, 14.5], 'cast iron': [10.8, 18] },
}

const newtonMetres = 1.3558179483314

export const toNewtonMetres = (poundFeet: number): number => poundFeet * newtonMetres
export const toPoundFeet = (metres: number): number => metres / newtonMetres

/** Least and most in lbf ft; undefined where the chart says nothing of this kind of plug. */
export const torqueRange = (thread: TorqueThread, seat: Seat, head: Head): Range | undefined =>
  seat === 'gasket' ? gasket[thread][head] : conical[thread]?.[head]

/** Without a torque wrench, after finger tight. Dealers' pages disagree for a new gasket: both figures stand. */
export const turnsAfterFingerTight: Readonly<Record<'new gasket' | 'used gasket' | 'conical', string>> = {
  'new gasket': '1/2 turn (one source says 1/2 to 3/4)',
  'used gasket': '1/12 turn',
  conical: '1/16 turn',
}

// The units a verdict is shown in. Judging is always done in psi and inHg; only numbers and words follow the choice.
import { toPressure, toVacuum } from '../units/convert.ts'
import { formatPressure, formatVacuum, withUnit } from '../units/format.ts'
import type { Pressure, Vacuum } from '../units/quantity.ts'

export type ShownUnits = { pressure: Pressure['unit']; vacuum: Vacuum['unit'] }

export const tradeUnits: ShownUnits = { pressure: 'psi', vacuum: 'inHg' }

const digits = { psi: 1, kPa: 0, bar: 2 } as const
const vacuumDigits = { inHg: 2, kPa: 1 } as const

export const round = (value: number, places = 1): number => Number(value.toFixed(places))

/** A pressure in psi as number and unit of the chosen scale. */
export const pressureShown = (psi: number, { pressure }: ShownUnits): { value: number; unit: string } => ({
  value: round(toPressure({ value: psi, unit: 'psi' }, pressure), digits[pressure]),
  unit: pressure,
})

/** A vacuum in inHg as number and unit of the chosen scale. */
export const vacuumShown = (inHg: number, { vacuum }: ShownUnits): { value: number; unit: string } => ({
  value: round(toVacuum({ value: inHg, unit: 'inHg' }, vacuum), vacuumDigits[vacuum]),
  unit: vacuum,
})

export const pressureWords = (psi: number, { pressure }: ShownUnits): string =>
  formatPressure({ value: round(psi), unit: 'psi' }, pressure)

export const vacuumWords = (inHg: number, { vacuum }: ShownUnits): string =>
  formatVacuum({ value: round(inHg), unit: 'inHg' }, vacuum)

export const percentWords = (value: number): string => withUnit(value.toFixed(0), '%')
export const rpmWords = (value: number): string => withUnit(value.toFixed(0).replace('-', '\u2212'), 'rpm')

/** "148 psi", "148 psi and 150 psi", "a, b and c". */
export const inWords = (words: readonly (string | number)[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

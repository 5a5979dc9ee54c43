// Numbers with their unit as people read them: sensible digits, a no-break space between number and unit.
import { toAltitude, toDistance, toLength, toPressure, toTemperature, toVacuum } from './convert.ts'
import type { Altitude, Distance, Length, Pressure, Temperature, Vacuum } from './quantity.ts'

const noBreakSpace = '\u00a0'

/** Digits after the point that a gauge of that scale can be read to. */
export const pressureDigits = { psi: 0, kPa: 0, bar: 2 } as const
export const vacuumDigits = { inHg: 1, kPa: 1 } as const
const lengthDigits = { mm: 2, in: 3 } as const

/** "148" or "10.20": rounded, never "-0". */
export function formatNumber(value: number, digits: number): string {
  const text = value.toFixed(digits)
  return Number(text) === 0 ? (0).toFixed(digits) : text.replace('-', '\u2212')
}

export const withUnit = (number: string, unit: string): string => `${number}${noBreakSpace}${unit}`

/** As typed when the unit is the one typed in, else rounded to what the other scale can show. */
function shown(value: number, typed: boolean, digits: number): string {
  if (!typed) return formatNumber(value, digits)
  const decimals = /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0
  return formatNumber(value, Math.max(digits, Math.min(decimals, 4)))
}

export const formatPressure = (quantity: Pressure, unit: Pressure['unit']): string =>
  withUnit(shown(toPressure(quantity, unit), quantity.unit === unit, pressureDigits[unit]), unit)

export const formatVacuum = (quantity: Vacuum, unit: Vacuum['unit']): string =>
  withUnit(shown(toVacuum(quantity, unit), quantity.unit === unit, vacuumDigits[unit]), unit)

export const formatLength = (quantity: Length, unit: Length['unit']): string =>
  withUnit(shown(toLength(quantity, unit), quantity.unit === unit, lengthDigits[unit]), unit)

export const formatTemperature = (quantity: Temperature, unit: Temperature['unit']): string =>
  withUnit(shown(toTemperature(quantity, unit), quantity.unit === unit, 0), unit)

export const formatAltitude = (quantity: Altitude, unit: Altitude['unit']): string =>
  withUnit(shown(toAltitude(quantity, unit), quantity.unit === unit, 0), unit)

/** Running hours stay hours whatever unit of distance is chosen. */
export function formatDistance(quantity: Distance, unit: Distance['unit']): string {
  const value = toDistance(quantity, unit)
  return value === null
    ? withUnit(shown(quantity.value, true, 0), quantity.unit)
    : withUnit(shown(value, quantity.unit === unit, 0), unit)
}

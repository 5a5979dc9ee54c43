// Conversions between the units people read off gauges, each from its definition (NIST SP 811, appendix B).
import type { Altitude, Distance, Length, Pressure, Temperature, Vacuum } from './quantity.ts'

/** One pound-force a square inch: 0.45359237 kg x 9.80665 m/s2 over (0.0254 m)2, in kPa. */
const kPaPerPsi = (0.45359237 * 9.80665) / (0.0254 * 0.0254) / 1000
/** Conventional inch of mercury: 13,595.1 kg/m3 (0 °C) x 9.80665 m/s2 x 0.0254 m, in kPa; SP 811 prints 3.386389. */
const kPaPerInHg = (13_595.1 * 9.80665 * 0.0254) / 1000
const mmPerInch = 25.4
const mPerFoot = 0.3048
const kmPerMile = 1.609344

const kPaPer = { psi: kPaPerPsi, kPa: 1, bar: 100, inHg: kPaPerInHg } as const

/** Gauge pressure in another unit. */
export const toPressure = (quantity: Pressure, unit: Pressure['unit']): number =>
  quantity.unit === unit ? quantity.value : (quantity.value * kPaPer[quantity.unit]) / kPaPer[unit]

/** Vacuum, or atmospheric pressure as a barometer shows it, in another unit. */
export const toVacuum = (quantity: Vacuum, unit: Vacuum['unit']): number =>
  quantity.unit === unit ? quantity.value : (quantity.value * kPaPer[quantity.unit]) / kPaPer[unit]

export const toLength = ({ value, unit: from }: Length, unit: Length['unit']): number =>
  from === unit ? value : unit === 'mm' ? value * mmPerInch : value / mmPerInch

/** A temperature, not a difference of temperatures. */
export const toTemperature = ({ value, unit: from }: Temperature, unit: Temperature['unit']): number =>
  from === unit ? value : unit === '°F' ? (value * 9) / 5 + 32 : ((value - 32) * 5) / 9

export const toAltitude = ({ value, unit: from }: Altitude, unit: Altitude['unit']): number =>
  from === unit ? value : unit === 'm' ? value * mPerFoot : value / mPerFoot

/** Distance in another unit; running hours are not a distance and give null. */
export const toDistance = ({ value, unit: from }: Distance, unit: Distance['unit']): number | null => {
  if (from === unit) return value
  if (from === 'h' || unit === 'h') return null
  return unit === 'km' ? value * kmPerMile : value / kmPerMile
}

const seaLevelKPa = 101.325
/** Top of the troposphere in metres, and the pressure there as a part of that at sea level. */
const troposphere = 11_000
const atTropopause = 0.223361

/** Sea-level pressure of the US Standard Atmosphere 1976, in inHg. */
export const seaLevelPressure = seaLevelKPa / kPaPerInHg

/**
 * Atmospheric pressure at an altitude, in inHg, by the US Standard Atmosphere 1976: 101.325 kPa and 288.15 K at sea
 * level, 6.5 K/km up to 11 km, exponent 5.255876. Above that the standard's layer of even temperature (216.65 K), so
 * that a mistyped altitude gives a small number and never none.
 */
export function standardPressureAt(altitude: Altitude): number {
  const metres = toAltitude(altitude, 'm')
  const part =
    metres <= troposphere
      ? (1 - (0.0065 * metres) / 288.15) ** 5.255876
      : atTropopause * Math.exp((troposphere - metres) / 6341.62)
  return seaLevelPressure * part
}

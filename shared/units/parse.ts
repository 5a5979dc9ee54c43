// What a person types into a field with a unit: comma or point, with or without the unit. Doubt gives null, never a guess.
import type { Altitude, Distance, Length, Pressure, Temperature, Vacuum } from './quantity.ts'

/**
 * A plain number with comma or point as the decimal sign, or null. Two signs, or spaces and apostrophes between
 * digits (thousands), are refused. One sign is the decimal sign here, as in a gap of 1.125; where a scale is too coarse
 * for that, the readers below refuse it.
 */
export function parseNumber(text: string): number | null {
  const plain = text.trim().replace('\u2212', '-')
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain)) return null
  const value = Number(plain.replace(',', '.'))
  return Number.isFinite(value) ? value : null
}

/** As people write them, in small letters without blanks and full stops. */
const spellings = new Map<string, string>([
  ...['psi', 'psig', 'lb/in2', 'lb/in²', 'lbf/in2', 'lbf/in²'].map(one => [one, 'psi'] as const),
  ['kpa', 'kPa'],
  ...['bar', 'bars'].map(one => [one, 'bar'] as const),
  ...['inhg', '"hg', 'inchhg', 'incheshg', 'inchesofmercury'].map(one => [one, 'inHg'] as const),
  ['mm', 'mm'],
  ...['in', 'inch', 'inches', '"'].map(one => [one, 'in'] as const),
  ...['°c', 'c', 'degc', 'celsius'].map(one => [one, '°C'] as const),
  ...['°f', 'f', 'degf', 'fahrenheit'].map(one => [one, '°F'] as const),
  ...['m', 'metre', 'metres', 'meter', 'meters'].map(one => [one, 'm'] as const),
  ...['ft', 'foot', 'feet', "'"].map(one => [one, 'ft'] as const),
  ['km', 'km'],
  ...['mi', 'mile', 'miles'].map(one => [one, 'mi'] as const),
  ...['h', 'hr', 'hrs', 'hour', 'hours'].map(one => [one, 'h'] as const),
])

const unitSpelled = (text: string): string | undefined =>
  spellings.get(
    text
      .toLowerCase()
      .replace(/[\s.]/g, '')
      .replace(/[″“”]/g, '"')
      .replace(/[′’]/g, "'")
      .replace(/[º˚]/g, '°')
      .replace('℃', '°c')
      .replace('℉', '°f'),
  )

/** "120,500" or "1.480": one sign and three digits, a thousand to some and a decimal to others. */
const mayBeThousands = (number: string): boolean => /^[+\-\u2212]?[1-9]\d{0,2}[.,]\d{3}$/.test(number)

type Parsed<U extends string> = { value: number; unit: U }
/** `coarse`: scales that nobody reads to a thousandth, where three digits after a sign are refused as doubtful. */
type Kind<U extends string> = { units: readonly U[]; coarse: readonly U[] }

function parseWithUnit<U extends string>(text: string, kind: Kind<U>, fallback: U): Parsed<U> | null {
  const parts = /^\s*([+\-\u2212]?[\d.,]+)\s*(.*?)\s*$/.exec(text)
  if (!parts) return null
  const [, number = '', spelled = ''] = parts
  const value = parseNumber(number)
  const unit = spelled === '' ? fallback : kind.units.find(one => one === unitSpelled(spelled))
  if (value === null || unit === undefined) return null
  return kind.coarse.includes(unit) && mayBeThousands(number) ? null : { value, unit }
}

const pressure: Kind<Pressure['unit']> = { units: ['psi', 'kPa', 'bar'], coarse: ['psi', 'kPa'] }
/** Barometers are read to a thousandth: "29,921", "101.325". */
const vacuum: Kind<Vacuum['unit']> = { units: ['inHg', 'kPa'], coarse: [] }
const length: Kind<Length['unit']> = { units: ['mm', 'in'], coarse: [] }
const temperature: Kind<Temperature['unit']> = { units: ['°C', '°F'], coarse: ['°C', '°F'] }
const altitude: Kind<Altitude['unit']> = { units: ['m', 'ft'], coarse: ['m', 'ft'] }
const distance: Kind<Distance['unit']> = { units: ['km', 'mi', 'h'], coarse: ['km', 'mi', 'h'] }

/** What was typed, in the unit typed or else the field's; null where it cannot be read without guessing. */
export const parsePressure = (text: string, fallback: Pressure['unit']): Pressure | null =>
  parseWithUnit(text, pressure, fallback)

export const parseVacuum = (text: string, fallback: Vacuum['unit']): Vacuum | null =>
  parseWithUnit(text, vacuum, fallback)

export const parseLength = (text: string, fallback: Length['unit']): Length | null =>
  parseWithUnit(text, length, fallback)

export const parseTemperature = (text: string, fallback: Temperature['unit']): Temperature | null =>
  parseWithUnit(text, temperature, fallback)

export const parseAltitude = (text: string, fallback: Altitude['unit']): Altitude | null =>
  parseWithUnit(text, altitude, fallback)

/** Odometer or running hours; never negative. */
export function parseDistance(text: string, fallback: Distance['unit']): Distance | null {
  const parsed = parseWithUnit(text, distance, fallback)
  return parsed && parsed.value >= 0 ? parsed : null
}

// What a person types into a field with a unit: comma or point, with or without the unit. Doubt gives null, never a guess.
import type { Altitude, Distance, Length, Pressure, Temperature, Vacuum } from './quantity.ts'

/**
 * A plain number with comma or point as the decimal sign, or null. Two signs, or spaces and apostrophes between
 * digits (thousands), are refused; a single sign is always the decimal sign, and the page echoes what it understood.
 */
export function parseNumber(text: string): number | null {
  const plain = text.trim().replace('\u2212', '-')
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain)) return null
  const value = Number(plain.replace(',', '.'))
  return Number.isFinite(value) ? value : null
}

const spellings: Record<string, string> = {
  psi: 'psi',
  psig: 'psi',
  'lb/in2': 'psi',
  kpa: 'kPa',
  bar: 'bar',
  inhg: 'inHg',
  '"hg': 'inHg',
  mm: 'mm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  c: '°C',
  '°c': '°C',
  f: '°F',
  '°f': '°F',
  m: 'm',
  ft: 'ft',
  feet: 'ft',
  km: 'km',
  mi: 'mi',
  mile: 'mi',
  miles: 'mi',
  h: 'h',
  hr: 'h',
  hours: 'h',
}

type Parsed<U extends string> = { value: number; unit: U }

function parseWithUnit<U extends string>(text: string, allowed: readonly U[], fallback: U): Parsed<U> | null {
  const parts = /^\s*([+\-\u2212]?[\d.,]+)\s*(.*?)\s*$/.exec(text)
  if (!parts) return null
  const value = parseNumber(parts[1] ?? '')
  const spelled = (parts[2] ?? '').toLowerCase().replace(/\s+/g, '')
  if (value === null) return null
  if (spelled === '') return { value, unit: fallback }
  const unit = allowed.find(one => one === spellings[spelled])
  return unit ? { value, unit } : null
}

export const parsePressure = (text: string, fallback: Pressure['unit']): Pressure | null =>
  parseWithUnit(text, ['psi', 'kPa', 'bar'], fallback)

export const parseVacuum = (text: string, fallback: Vacuum['unit']): Vacuum | null =>
  parseWithUnit(text, ['inHg', 'kPa'], fallback)

export const parseLength = (text: string, fallback: Length['unit']): Length | null =>
  parseWithUnit(text, ['mm', 'in'], fallback)

export const parseTemperature = (text: string, fallback: Temperature['unit']): Temperature | null =>
  parseWithUnit(text, ['°C', '°F'], fallback)

/** "120,500" may be a thousand or a decimal: where whole numbers are usual it is refused, not guessed. */
const mayBeThousands = (text: string): boolean => /^\s*[+-]?\d{1,3}[.,]\d{3}(\D|$)/.test(text)

export const parseAltitude = (text: string, fallback: Altitude['unit']): Altitude | null =>
  mayBeThousands(text) ? null : parseWithUnit(text, ['m', 'ft'], fallback)

/** Odometer or running hours; never negative. */
export function parseDistance(text: string, fallback: Distance['unit']): Distance | null {
  if (mayBeThousands(text)) return null
  const parsed = parseWithUnit<Distance['unit']>(text, ['km', 'mi', 'h'], fallback)
  return parsed && parsed.value >= 0 ? parsed : null
}

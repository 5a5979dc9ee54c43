// Readers for the plain numbers of an entry: each gives null for what is no number or lies beyond what a job may hold.
import { parseNumber } from '../../../../../shared/units/parse.ts'

type Read = (text: string) => number | null

const between =
  (low: number, high: number): Read =>
  text => {
    const value = parseNumber(text)
    return value !== null && value >= low && value <= high ? value : null
  }

const whole =
  (read: Read): Read =>
  text => {
    const value = read(text)
    return value !== null && Number.isInteger(value) ? value : null
  }

export const readRpm = between(0, 20_000)
export const readCrankingRpm = between(0, 1000)
export const readVolts = between(0, 60)
export const readPuffs = whole(between(1, 60))
export const readMillilitres = between(0, 200)
export const readPercent = between(0, 100)
export const readTrim = between(-100, 100)
export const readCount = whole(between(0, 65_535))
export const readKilovolts = between(0, 100)
export const readMinutes = between(0, 1440)
export const readCylinder = whole(between(1, 32))
export const readBank = whole(between(1, 4))
/** Above zero; for divisions and full scales. */
export const readSize: Read = text => {
  const value = parseNumber(text)
  return value !== null && value > 0 ? value : null
}

const multiples = new Map([
  ['', 1],
  ['k', 1e3],
  ['m', 1e6],
  ['g', 1e9],
])

/** Ohms, also as "4.7k", "12 kΩ" or "1M" (mega). */
export const readOhms: Read = text => {
  const parts = /^\s*([\d.,]+)\s*([kMG]?)\s*(?:Ω|ohms?)?\s*$/i.exec(text)
  if (!parts) return null
  const value = parseNumber(parts[1] ?? '')
  const times = multiples.get((parts[2] ?? '').toLowerCase())
  return value === null || times === undefined || value * times > 1e12 ? null : value * times
}

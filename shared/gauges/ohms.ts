// Resistances as people read them: Ω, kΩ or MΩ, three figures.
import { withUnit } from '../units/format.ts'

const scaleOf = (ohms: number): { factor: number; unit: string } =>
  ohms >= 1e6
    ? { factor: 1e6, unit: 'MΩ' }
    : ohms >= 1000
      ? { factor: 1000, unit: 'kΩ' }
      : { factor: 1, unit: 'Ω' }

const figures = (value: number): number => (value === 0 ? 0 : Number(value.toPrecision(3)))

/** Value and half width in one unit. */
export function ohmsShown(
  ohms: number,
  plusMinus: number,
): { value: number; plusMinus: number; unit: string } {
  const { factor, unit } = scaleOf(ohms)
  return { value: figures(ohms / factor), plusMinus: Number((plusMinus / factor).toPrecision(2)), unit }
}

export function ohmsWords(ohms: number): string {
  const { factor, unit } = scaleOf(ohms)
  return withUnit(String(figures(ohms / factor)), unit)
}

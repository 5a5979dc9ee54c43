// The units of pressure and vacuum that pulls were entered in: an offset means something in one unit only.
import { asCorrected } from '../../../../../shared/job/current.ts'
import type { Pull } from '../../../../../shared/job/pull-schema.ts'

const gaugeUnits = ['psi', 'kPa', 'bar', 'inHg'] as const

/** Each unit once. Lengths and temperatures of an entry are no gauge reading and are left out. */
export function enteredUnits(pulls: readonly Pull[]): string[] {
  const found = new Set<string>()
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return
    if ('unit' in value && gaugeUnits.some(one => one === value.unit)) found.add(String(value.unit))
    for (const part of Object.values(value)) walk(part)
  }
  for (const pull of pulls) walk(asCorrected(pull).entry)
  return [...found]
}

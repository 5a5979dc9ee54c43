// A correction as it is being typed, and what it comes to.
import type { CorrectionHow } from '../../../../../shared/gauges/correction-schema.ts'
import { parseNumber } from '../../../../../shared/units/parse.ts'

export type Draft = { kind: CorrectionHow['kind']; read: string; real: string; add: string; unit: string }
export const emptyDraft: Draft = { kind: 'scale', read: '', real: '', add: '', unit: '' }

type CorrectionUnit = Extract<CorrectionHow, { kind: 'unit' }>['unit']
export const unitNames: readonly CorrectionUnit[] = ['psi', 'kPa', 'bar', 'inHg']

/** Undefined until the fields say a correction; the factor is the real division over the one it was taken for. */
export function howOf({ kind, read, real, add, unit }: Draft): CorrectionHow | undefined {
  switch (kind) {
    case 'scale': {
      const [taken, was] = [parseNumber(read), parseNumber(real)]
      if (taken === null || was === null || taken <= 0 || was <= 0) return undefined
      const factor = Number((was / taken).toPrecision(12))
      return factor === 1 || factor > 100 ? undefined : { kind, factor }
    }
    case 'offset': {
      const value = parseNumber(add)
      return value === null || value === 0 ? undefined : { kind, add: value }
    }
    case 'unit': {
      const name = unitNames.find(one => one === unit)
      return name === undefined ? undefined : { kind, unit: name }
    }
    default:
      return { kind: 'as entered' }
  }
}

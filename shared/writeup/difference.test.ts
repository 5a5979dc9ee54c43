// The difference between two sets and the interval it lies in.
import { describe, expect, it } from 'vitest'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import { differenceWords } from './difference.ts'

const verdict = (value: number, plusMinus?: number, unit = 'psi'): GaugeVerdict => ({
  test: 'compression',
  rule: 'below highest',
  cylinder: 3,
  stage: 'as found',
  value,
  ...(plusMinus === undefined ? {} : { plusMinus }),
  unit,
  verdict: 'outside',
  limit: '',
  why: '',
  source: 'common practice',
})
const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ')

describe('the difference between as found and after the work', () => {
  it('lies in an interval as wide as both together', () => {
    expect(plain(differenceWords(verdict(96, 2.5), verdict(150, 2.5)))).toBe('+54 ± 5 psi')
    expect(plain(differenceWords(verdict(9.5, 0.1), verdict(9, 0.2)))).toBe('−0.5 ± 0.3 psi')
  })
  it('claims no interval where one side has none', () => {
    expect(plain(differenceWords(verdict(96), verdict(150, 2.5)))).toBe('+54 psi')
    expect(plain(differenceWords(verdict(96), verdict(96)))).toBe('0 psi')
  })
  it('is none between units', () => {
    expect(differenceWords(verdict(96), verdict(6.6, 0.1, 'bar'))).toBeUndefined()
  })
})

// How numbers are shown: unit bound to number, no more digits than the scale shows, what was typed as it was typed.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  formatAltitude,
  formatDistance,
  formatLength,
  formatNumber,
  formatPressure,
  formatTemperature,
  formatVacuum,
} from './format.ts'
import {
  parseAltitude,
  parseDistance,
  parseLength,
  parsePressure,
  parseTemperature,
  parseVacuum,
} from './parse.ts'
import { pressureUnits } from './quantity.ts'

describe('another scale', () => {
  it('shows the digits that it can be read to', () => {
    expect(formatPressure({ value: 148, unit: 'psi' }, 'kPa')).toBe('1020\u00a0kPa')
    expect(formatPressure({ value: 148, unit: 'psi' }, 'bar')).toBe('10.20\u00a0bar')
    expect(formatPressure({ value: 10.2, unit: 'bar' }, 'psi')).toBe('148\u00a0psi')
    expect(formatVacuum({ value: 18, unit: 'inHg' }, 'kPa')).toBe('61.0\u00a0kPa')
    expect(formatLength({ value: 0.044, unit: 'in' }, 'mm')).toBe('1.12\u00a0mm')
    expect(formatLength({ value: 1.1, unit: 'mm' }, 'in')).toBe('0.043\u00a0in')
    expect(formatTemperature({ value: 90, unit: '°C' }, '°F')).toBe('194\u00a0°F')
    expect(formatAltitude({ value: 1609, unit: 'm' }, 'ft')).toBe('5279\u00a0ft')
    expect(formatDistance({ value: 100, unit: 'mi' }, 'km')).toBe('161\u00a0km')
  })
  it('leaves running hours as hours', () => {
    expect(formatDistance({ value: 812.5, unit: 'h' }, 'mi')).toBe('812.5\u00a0h')
  })
})

describe('the scale it was read on', () => {
  it('keeps the decimals that were typed', () => {
    expect(formatPressure({ value: 148.5, unit: 'psi' }, 'psi')).toBe('148.5\u00a0psi')
    expect(formatPressure({ value: 10.2, unit: 'bar' }, 'bar')).toBe('10.20\u00a0bar')
    expect(formatVacuum({ value: 18.25, unit: 'inHg' }, 'inHg')).toBe('18.25\u00a0inHg')
  })
  it('reads back as the same quantity', () => {
    const tenths = fc.integer({ min: -999, max: 9999 }).map(n => n / 10)
    fc.assert(
      fc.property(tenths, value => {
        const { psi, inHg, mm, c, ft } = {
          psi: { value, unit: 'psi' } as const,
          inHg: { value, unit: 'inHg' } as const,
          mm: { value, unit: 'mm' } as const,
          c: { value, unit: '°C' } as const,
          ft: { value, unit: 'ft' } as const,
        }
        expect(parsePressure(formatPressure(psi, 'psi'), 'bar')).toEqual(psi)
        expect(parseVacuum(formatVacuum(inHg, 'inHg'), 'kPa')).toEqual(inHg)
        expect(parseLength(formatLength(mm, 'mm'), 'in')).toEqual(mm)
        expect(parseTemperature(formatTemperature(c, '°C'), '°F')).toEqual(c)
        expect(parseAltitude(formatAltitude(ft, 'ft'), 'm')).toEqual(ft)
        const km = { value: Math.abs(value), unit: 'km' } as const
        expect(parseDistance(formatDistance(km, 'km'), 'mi')).toEqual(km)
      }),
    )
  })
})

it('is never broken between number and unit', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e5, max: 1e5, noNaN: true }),
      fc.constantFrom(...pressureUnits),
      fc.constantFrom(...pressureUnits),
      (value, from, to) => {
        const text = formatPressure({ value, unit: from }, to)
        expect(text).toMatch(/^\u2212?\d+(\.\d+)?\u00a0(psi|kPa|bar)$/)
      },
    ),
  )
})

it('has no minus nought', () => {
  expect(formatNumber(-0.001, 1)).toBe('0.0')
  expect(formatNumber(-0, 0)).toBe('0')
  expect(formatNumber(-1.26, 1)).toBe('\u22121.3')
})

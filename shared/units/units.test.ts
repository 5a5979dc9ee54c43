// Laws of units: there and back is the same number, what was typed is shown as typed, doubt is refused.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  standardPressureAt,
  toAltitude,
  toDistance,
  toLength,
  toPressure,
  toTemperature,
  toVacuum,
} from './convert.ts'
import { formatDistance, formatLength, formatNumber, formatPressure, formatVacuum } from './format.ts'
import {
  parseDistance,
  parseLength,
  parseNumber,
  parsePressure,
  parseTemperature,
  parseVacuum,
} from './parse.ts'
import { pressureUnits } from './quantity.ts'

const value = fc.double({ min: -1e4, max: 1e4, noNaN: true })

describe('conversions', () => {
  it('come back to where they started', () => {
    fc.assert(
      fc.property(value, fc.constantFrom(...pressureUnits), fc.constantFrom(...pressureUnits), (v, a, b) => {
        expect(toPressure({ value: toPressure({ value: v, unit: a }, b), unit: b }, a)).toBeCloseTo(v, 8)
      }),
    )
    fc.assert(
      fc.property(value, v => {
        expect(
          toVacuum({ value: toVacuum({ value: v, unit: 'inHg' }, 'kPa'), unit: 'kPa' }, 'inHg'),
        ).toBeCloseTo(v, 8)
        expect(toLength({ value: toLength({ value: v, unit: 'in' }, 'mm'), unit: 'mm' }, 'in')).toBeCloseTo(
          v,
          8,
        )
        expect(
          toTemperature({ value: toTemperature({ value: v, unit: '°F' }, '°C'), unit: '°C' }, '°F'),
        ).toBeCloseTo(v, 8)
        expect(toAltitude({ value: toAltitude({ value: v, unit: 'ft' }, 'm'), unit: 'm' }, 'ft')).toBeCloseTo(
          v,
          8,
        )
      }),
    )
  })
  it('keep running hours out of distances', () => {
    expect(toDistance({ value: 812, unit: 'h' }, 'km')).toBeNull()
    expect(formatDistance({ value: 812, unit: 'h' }, 'mi')).toBe('812\u00a0h')
    expect(toDistance({ value: 100, unit: 'mi' }, 'km')).toBeCloseTo(160.9344, 9)
  })
  it('lower the atmosphere with altitude', () => {
    expect(standardPressureAt({ value: 0, unit: 'm' })).toBeCloseTo(29.9213, 3)
    expect(standardPressureAt({ value: 1, unit: 'm' })).toBeLessThan(
      standardPressureAt({ value: 0, unit: 'm' }),
    )
  })
})

describe('formatting', () => {
  it('binds unit to number and rounds to what the scale shows', () => {
    expect(formatPressure({ value: 148, unit: 'psi' }, 'psi')).toBe('148\u00a0psi')
    expect(formatPressure({ value: 148, unit: 'psi' }, 'bar')).toBe('10.20\u00a0bar')
    expect(formatPressure({ value: 10.2, unit: 'bar' }, 'bar')).toBe('10.20\u00a0bar')
    expect(formatVacuum({ value: 18.25, unit: 'inHg' }, 'inHg')).toBe('18.25\u00a0inHg')
    expect(formatLength({ value: 0.044, unit: 'in' }, 'mm')).toBe('1.12\u00a0mm')
  })
  it('never shows minus nought', () => {
    expect(formatNumber(-0.001, 1)).toBe('0.0')
    expect(formatNumber(-1.25, 1)).toMatch(/^\u22121\.[23]$/)
  })
})

describe('parsing', () => {
  it.each([
    ['148', 148],
    ['10,2', 10.2],
    ['10.2', 10.2],
    [' -3 ', -3],
    [',5', 0.5],
  ])('%s is a number', (text, expected) => expect(parseNumber(text)).toBe(expected))
  it.each(['', '1,480.5', '1 480', "1'480", '12a', '--3', '1e3', 'Infinity', '.'])(
    '"%s" is refused',
    text => {
      expect(parseNumber(text)).toBeNull()
    },
  )
  it('takes a unit typed into a field of another unit', () => {
    expect(parsePressure('10.2 bar', 'psi')).toEqual({ value: 10.2, unit: 'bar' })
    expect(parsePressure('1020kpa', 'psi')).toEqual({ value: 1020, unit: 'kPa' })
    expect(parsePressure('148', 'psi')).toEqual({ value: 148, unit: 'psi' })
    expect(parseVacuum('18 in Hg', 'kPa')).toEqual({ value: 18, unit: 'inHg' })
    expect(parseLength('.044"', 'mm')).toEqual({ value: 0.044, unit: 'in' })
    expect(parseTemperature('90 C', '°F')).toEqual({ value: 90, unit: '°C' })
  })
  it('refuses a unit of another kind, and thousands where they would be guessed', () => {
    expect(parsePressure('18 inHg', 'psi')).toBeNull()
    expect(parseDistance('120,500', 'km')).toBeNull()
    expect(parseDistance('120.500 mi', 'km')).toBeNull()
    expect(parseDistance('-5', 'km')).toBeNull()
    expect(parseDistance('120500', 'km')).toEqual({ value: 120500, unit: 'km' })
  })
})

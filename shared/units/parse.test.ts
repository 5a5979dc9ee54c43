// What people type is read as they meant it, or refused: a thousands sign is never guessed at.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  parseAltitude,
  parseDistance,
  parseLength,
  parseNumber,
  parsePressure,
  parseTemperature,
  parseVacuum,
} from './parse.ts'

describe('a plain number', () => {
  it.each([
    ['148', 148],
    ['10,2', 10.2],
    ['10.2', 10.2],
    [' -3 ', -3],
    ['\u22123', -3],
    [',5', 0.5],
    ['148.', 148],
    ['0.044', 0.044],
  ])('"%s" is read', (text, expected) => {
    expect(parseNumber(text)).toBe(expected)
  })
  it.each([
    '',
    ' ',
    '1,480.5',
    '1.480.000',
    '1 480',
    '1\u00a0480',
    "1'480",
    '12a',
    '--3',
    '1e3',
    '0x10',
    'Infinity',
    '.',
  ])('"%s" is refused', text => {
    expect(parseNumber(text)).toBeNull()
  })
  it('means the same with a comma as with a point', () => {
    fc.assert(
      fc.property(fc.integer({ min: -99_999, max: 99_999 }), fc.nat(99), (whole, hundredths) => {
        const digits = String(hundredths).padStart(2, '0')
        expect(parseNumber(`${whole},${digits}`)).toBe(parseNumber(`${whole}.${digits}`))
        expect(parseNumber(`${whole}.${digits}`)).toBe(Number(`${whole}.${digits}`))
      }),
    )
  })
  it('is a finite number or nothing, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), text => {
        const value = parseNumber(text)
        expect(value === null || Number.isFinite(value)).toBe(true)
      }),
    )
  })
})

describe('a unit', () => {
  it('may be left out, or be another than the field shows', () => {
    expect(parsePressure('148', 'psi')).toEqual({ value: 148, unit: 'psi' })
    expect(parsePressure('10.2 bar', 'psi')).toEqual({ value: 10.2, unit: 'bar' })
    expect(parsePressure('1020kpa', 'psi')).toEqual({ value: 1020, unit: 'kPa' })
  })
  it.each(['in Hg', 'inHg', 'INHG', 'in. Hg', '"Hg', '″ Hg', 'inches Hg'])(
    '"%s" is inches of mercury',
    spelled => {
      expect(parseVacuum(`18,5 ${spelled}`, 'kPa')).toEqual({ value: 18.5, unit: 'inHg' })
    },
  )
  it.each(['C', 'c', '°C', '° C', 'ºC', '℃', 'deg C', 'degC'])('"%s" is degrees Celsius', spelled => {
    expect(parseTemperature(`90 ${spelled}`, '°F')).toEqual({ value: 90, unit: '°C' })
  })
  it.each(['in', 'in.', '"', '”', '″', 'inch'])('"%s" is inches', spelled => {
    expect(parseLength(`.044${spelled}`, 'mm')).toEqual({ value: 0.044, unit: 'in' })
  })
  it.each([
    ['5280 ft', 'm', 5280, 'ft'],
    ["5280'", 'm', 5280, 'ft'],
    ['1609 metres', 'ft', 1609, 'm'],
  ] as const)('"%s" is an altitude', (text, field, value, unit) => {
    expect(parseAltitude(text, field)).toEqual({ value, unit })
  })
  it.each([
    ['120500', 'km', 120_500, 'km'],
    ['75000 miles', 'km', 75_000, 'mi'],
    ['812.5 hrs', 'mi', 812.5, 'h'],
  ] as const)('"%s" is a distance, or running hours', (text, field, value, unit) => {
    expect(parseDistance(text, field)).toEqual({ value, unit })
  })
  it('of another kind, or unknown, is refused', () => {
    expect(parsePressure('18 inHg', 'psi')).toBeNull()
    expect(parseVacuum('10 bar', 'inHg')).toBeNull()
    expect(parseLength('3 m', 'mm')).toBeNull()
    expect(parseTemperature('90 K', '°C')).toBeNull()
    for (const word of ['constructor', '__proto__', 'psi psi', '148'])
      expect(parsePressure(`148 ${word}`, 'psi')).toBeNull()
  })
})

describe('thousands', () => {
  it('are refused where the scale has no thousandths', () => {
    for (const text of ['1,480', '1.480', '1,480 kPa', '\u22121,480'])
      expect(parsePressure(text, 'kPa')).toBeNull()
    for (const text of ['120,500', '120.500 mi', '1,200 h']) expect(parseDistance(text, 'km')).toBeNull()
    expect(parseAltitude('5,280 ft', 'm')).toBeNull()
    expect(parseTemperature('1,200', '°F')).toBeNull()
  })
  it('are not suspected where a thousandth is read, or the number begins with nought', () => {
    expect(parsePressure('10.204', 'bar')).toEqual({ value: 10.204, unit: 'bar' })
    expect(parseVacuum('29,921', 'inHg')).toEqual({ value: 29.921, unit: 'inHg' })
    expect(parseVacuum('101.325 kPa', 'inHg')).toEqual({ value: 101.325, unit: 'kPa' })
    expect(parseLength('1.125', 'mm')).toEqual({ value: 1.125, unit: 'mm' })
    expect(parseDistance('0.250', 'km')).toEqual({ value: 0.25, unit: 'km' })
  })
})

it('refuses a distance run backwards', () => {
  expect(parseDistance('-5', 'km')).toBeNull()
})

// Fuel pressure by state of the engine, and fuel trims by bank and state.
import type { FuelPressureEntry, TrimsEntry } from '../../../../../shared/gauges/fuel-entries.ts'
import type { Pressure } from '../../../../../shared/units/quantity.ts'
import { parsePressure } from '../../../../../shared/units/parse.ts'
import { chosen, given } from '../entry/field.ts'
import { readBank, readMinutes, readTrim } from '../entry/read-number.ts'
import type { DefineEngineTest } from './engine-test.ts'

const fuelStates: readonly FuelPressureEntry['state'][] = [
  'key on',
  'idle',
  '2500 rpm',
  'load',
  'after stopping',
]
const trimStates: readonly TrimsEntry['state'][] = ['idle', '2500 rpm', 'load']
const loops = ['closed', 'open'] as const

export const fuelPressureTest: DefineEngineTest = ({ pressure: unit }) => {
  const pressure = (text: string): Pressure | null => parsePressure(text, unit)
  return {
    test: 'fuel pressure',
    keepWords: 'Keep the reading',
    needs: 'Type the pressure first.',
    initial: { state: 'key on' },
    stays: [],
    fields: ({ state }) => [
      { name: 'state', title: 'State', kind: 'choice', options: fuelStates, needed: true },
      { name: 'pressure', title: 'Fuel pressure', unit, kind: 'number', parse: pressure },
      ...(state === 'after stopping'
        ? [
            {
              name: 'minutes',
              title: 'Stopped for',
              unit: 'min',
              kind: 'number',
              parse: readMinutes,
            } as const,
          ]
        : []),
    ],
    pull: (typed, base) => {
      const state = chosen(typed.state, fuelStates)
      const read = given(typed.pressure, pressure)
      const minutes = given(typed.minutes, readMinutes)
      if (!state || !read) return null
      return {
        ...base,
        test: 'fuel pressure',
        entry: {
          state,
          pressure: read,
          ...(state === 'after stopping' && minutes !== undefined && { minutes }),
        },
      }
    },
  }
}

export const trimsTest: DefineEngineTest = () => ({
  test: 'trims',
  keepWords: 'Keep the trims',
  needs: 'Type bank and at least one trim first.',
  initial: { bank: '1', state: 'idle', loop: 'closed' },
  stays: ['bank', 'state', 'loop'],
  fields: () => [
    { name: 'bank', title: 'Bank', kind: 'choice', options: ['1', '2', '3', '4'], needed: true },
    { name: 'state', title: 'State', kind: 'choice', options: trimStates, needed: true },
    { name: 'loop', title: 'Loop', kind: 'choice', options: loops },
    { name: 'short', title: 'Short term', unit: '%', kind: 'number', parse: readTrim },
    { name: 'long', title: 'Long term', unit: '%', kind: 'number', parse: readTrim },
  ],
  pull: (typed, base) => {
    const bank = given(typed.bank, readBank)
    const state = chosen(typed.state, trimStates)
    const shortTerm = given(typed.short, readTrim)
    const longTerm = given(typed.long, readTrim)
    const loop = chosen(typed.loop, loops)
    if (bank === undefined || !state || (shortTerm === undefined && longTerm === undefined)) return null
    return {
      ...base,
      test: 'trims',
      entry: {
        bank,
        state,
        ...(shortTerm !== undefined && { shortTerm }),
        ...(longTerm !== undefined && { longTerm }),
        ...(loop && { closedLoop: loop === 'closed' }),
      },
    }
  },
})

// Injectors cylinder by cylinder: pressure drop of a timed pulse, click and pulse; and the misfire counts of the monitor.
import type { InjectorEntry } from '../../../../../shared/gauges/fuel-entries.ts'
import type { MisfireCountEntry } from '../../../../../shared/gauges/scan-entries.ts'
import type { Pressure } from '../../../../../shared/units/quantity.ts'
import { parsePressure } from '../../../../../shared/units/parse.ts'
import { chosen, given } from '../entry/field.ts'
import { readCount, readOhms } from '../entry/read-number.ts'
import type { DefineCylinderTest } from './cylinder-test.ts'

const clicks: readonly NonNullable<InjectorEntry['click']>[] = ['clear', 'faint', 'none']
const occasions: readonly NonNullable<MisfireCountEntry['during']>[] = [
  'this drive',
  'average of ten drives',
  'idle',
  'under load',
  'cold',
]

export const injectorBalanceTest: DefineCylinderTest = ({ pressure: unit }) => {
  const pressure = (text: string): Pressure | null => parsePressure(text, unit)
  return {
    test: 'injector balance',
    settings: [],
    initial: {},
    columns: () => [
      { name: 'before', title: 'Before', unit, kind: 'number', parse: pressure },
      { name: 'after', title: 'After', unit, kind: 'number', parse: pressure },
    ],
    pull: (row, base) => {
      const before = given(row.before, pressure)
      const after = given(row.after, pressure)
      return before && after ? { ...base, test: 'injector balance', entry: { before, after } } : null
    },
    pullsEach: 1,
  }
}

export const injectorTest: DefineCylinderTest = () => ({
  test: 'injector',
  settings: [],
  initial: {},
  columns: () => [
    { name: 'click', title: 'Click', kind: 'choice', options: clicks },
    { name: 'pulse', title: 'Pulse', kind: 'choice', options: ['seen', 'not seen'] },
    { name: 'ohms', title: 'Winding', unit: 'Ω', kind: 'number', parse: readOhms },
  ],
  pull: (row, base) => {
    const click = chosen(row.click, clicks)
    const ohms = given(row.ohms, readOhms)
    if (!click && !row.pulse && ohms === undefined) return null
    return {
      ...base,
      test: 'injector',
      entry: {
        ...(click && { click }),
        ...(row.pulse && { pulse: row.pulse === 'seen' }),
        ...(ohms !== undefined && { ohms }),
      },
    }
  },
  pullsEach: 1,
})

export const misfireCountsTest: DefineCylinderTest = () => ({
  test: 'misfire counts',
  settings: [{ name: 'during', title: 'Counted during', kind: 'choice', options: occasions }],
  initial: {},
  columns: () => [{ name: 'count', title: 'Misfires', kind: 'number', parse: readCount }],
  pull: (row, base, settings) => {
    const count = given(row.count, readCount)
    const during = chosen(settings.during, occasions)
    return count === undefined
      ? null
      : { ...base, test: 'misfire counts', entry: { count, ...(during && { during }) } }
  },
  pullsEach: 1,
})

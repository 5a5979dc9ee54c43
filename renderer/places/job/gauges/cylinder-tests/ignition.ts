// Spark at a tester and resistances of lead, coil and plug, cylinder by cylinder.
import type { ResistanceEntry, SparkEntry } from '../../../../../shared/gauges/ignition-entries.ts'
import type { Length } from '../../../../../shared/units/quantity.ts'
import { parseLength } from '../../../../../shared/units/parse.ts'
import { chosen, given } from '../entry/field.ts'
import { readKilovolts, readOhms } from '../entry/read-number.ts'
import type { DefineCylinderTest } from './cylinder-test.ts'

const sparks: readonly SparkEntry['spark'][] = ['strong', 'weak', 'intermittent', 'none']
const tracks: readonly NonNullable<SparkEntry['tracks']>[] = [
  'none seen',
  'boot',
  'plug insulator',
  'lead',
  'coil',
  'distributor cap or rotor',
]
const parts: readonly ResistanceEntry['part'][] = [
  'lead',
  'coil primary',
  'coil secondary',
  'plug',
  'plug insulation',
]

export const sparkTest: DefineCylinderTest = ({ length: unit }) => {
  const gapOf = (text: string): Length | null => parseLength(text, unit)
  return {
    test: 'spark',
    settings: [
      { name: 'gap', title: 'Gap of the tester', unit, kind: 'number', parse: gapOf },
      { name: 'kilovolts', title: 'or its voltage', unit: 'kV', kind: 'number', parse: readKilovolts },
    ],
    initial: {},
    columns: () => [
      { name: 'spark', title: 'Spark', kind: 'choice', options: sparks },
      { name: 'tracks', title: 'Runs off at', kind: 'choice', options: tracks },
    ],
    pull: (row, base, settings) => {
      const spark = chosen(row.spark, sparks)
      if (!spark) return null
      const offAt = chosen(row.tracks, tracks)
      const gap = given(settings.gap, gapOf)
      const kilovolts = given(settings.kilovolts, readKilovolts)
      return {
        ...base,
        test: 'spark',
        entry: {
          spark,
          ...(offAt && { tracks: offAt }),
          ...(gap && { gap }),
          ...(kilovolts !== undefined && { kilovolts }),
        },
      }
    },
    pullsEach: 1,
  }
}

export const resistanceTest: DefineCylinderTest = ({ length: unit }) => {
  const lengthOf = (text: string): Length | null => parseLength(text, unit)
  return {
    test: 'resistance',
    settings: [
      { name: 'part', title: 'Measured', kind: 'choice', options: parts, needed: true },
      { name: 'minimum', title: 'Specified from', unit: 'Ω', kind: 'number', parse: readOhms },
      { name: 'maximum', title: 'to', unit: 'Ω', kind: 'number', parse: readOhms },
    ],
    initial: { part: 'lead' },
    columns: ({ part }) => [
      { name: 'ohms', title: 'Resistance', unit: 'Ω', kind: 'number', parse: readOhms },
      { name: 'open', title: 'Circuit', kind: 'choice', options: ['closed', 'open'] },
      ...(part === 'lead'
        ? [{ name: 'length', title: 'Length', unit, kind: 'number', parse: lengthOf } as const]
        : []),
    ],
    pull: (row, base, settings) => {
      const part = chosen(settings.part, parts)
      const isOpen = row.open === 'open'
      const ohms = isOpen ? undefined : given(row.ohms, readOhms)
      if (!part || (ohms === undefined && !isOpen)) return null
      const length = given(row.length, lengthOf)
      const minimum = given(settings.minimum, readOhms)
      const maximum = given(settings.maximum, readOhms)
      if ((minimum === undefined) !== (maximum === undefined))
        return 'Type both ends of the specified range, or none.'
      return {
        ...base,
        test: 'resistance',
        entry: {
          part,
          ...(ohms !== undefined && { ohms }),
          ...(isOpen && { open: true }),
          ...(length && { length }),
          ...(minimum !== undefined && maximum !== undefined && { specified: { minimum, maximum } }),
        },
      }
    },
    pullsEach: 1,
  }
}

// Running compression by cylinder: at idle and in a snap of the throttle.
import type { Pressure } from '../../../../../shared/units/quantity.ts'
import { parsePressure } from '../../../../../shared/units/parse.ts'
import { given } from '../entry/field.ts'
import { readRpm } from '../entry/read-number.ts'
import type { DefineCylinderTest } from './cylinder-test.ts'

export const runningCompressionTest: DefineCylinderTest = ({ pressure: unit }) => {
  const pressure = (text: string): Pressure | null => parsePressure(text, unit)
  return {
    test: 'running compression',
    settings: [],
    initial: {},
    columns: () => [
      { name: 'idle', title: 'Idle', unit, kind: 'number', parse: pressure },
      { name: 'snap', title: 'Snap', unit, kind: 'number', parse: pressure },
      { name: 'rpm', title: 'Idle speed', unit: 'rpm', kind: 'number', parse: readRpm, more: true },
    ],
    pull: (row, base) => {
      const idle = given(row.idle, pressure)
      const snap = given(row.snap, pressure)
      const rpm = given(row.rpm, readRpm)
      if (!idle && !snap) return null
      return {
        ...base,
        test: 'running compression',
        entry: { ...(idle && { idle }), ...(snap && { snap }), ...(rpm !== undefined && { rpm }) },
      }
    },
    pullsEach: 1,
  }
}

// Leak-down by cylinder: percent lost or supply and held pressure, and where the air is heard to go.
import type { EscapePath } from '../../../../../shared/gauges/leak-down-entry.ts'
import type { Length, Pressure } from '../../../../../shared/units/quantity.ts'
import { parseLength, parsePressure } from '../../../../../shared/units/parse.ts'
import { type Field, given, severalChosen } from '../entry/field.ts'
import { readCylinder, readPercent } from '../entry/read-number.ts'
import type { DefineCylinderTest } from './cylinder-test.ts'

const paths: readonly EscapePath[] = [
  'intake',
  'exhaust',
  'oil filler',
  'radiator',
  'next plug hole',
  'plug adapter',
  'nothing heard',
]
const two = 'supply and held'

export const leakDownTest: DefineCylinderTest = ({ pressure: unit, length }) => {
  const pressure = (text: string): Pressure | null => parsePressure(text, unit)
  const orifice = (text: string): Length | null => parseLength(text, length)
  const escapes: Field = { name: 'escapes', title: 'Air heard at', kind: 'several', options: paths }
  const towards: Field = {
    name: 'towards',
    title: 'Blows from cylinder',
    kind: 'number',
    parse: readCylinder,
    more: true,
  }
  return {
    test: 'leak-down',
    settings: [
      {
        name: 'form',
        title: 'The tester shows',
        kind: 'choice',
        options: ['percent lost', two],
        needed: true,
      },
      { name: 'supply', title: 'Supply', unit, kind: 'number', parse: pressure },
      { name: 'orifice', title: 'Orifice', unit: length, kind: 'number', parse: orifice },
    ],
    initial: { form: 'percent lost' },
    columns: ({ form }) => [
      form === two
        ? { name: 'held', title: 'Held', unit, kind: 'number', parse: pressure }
        : { name: 'percent', title: 'Lost', unit: '%', kind: 'number', parse: readPercent },
      escapes,
      towards,
    ],
    pull: (row, base, settings, { engine }) => {
      const heard = severalChosen(row.escapes, paths)
      const blowing = given(row.towards, readCylinder)
      const bore = given(settings.orifice, orifice)
      const supply = given(settings.supply, pressure)
      const rest = {
        ...(heard.length > 0 && { escapes: heard }),
        ...(blowing !== undefined && { towards: blowing }),
        ...(bore && { orifice: bore }),
        ...(engine && { engine }),
      }
      if (settings.form === two) {
        const held = given(row.held, pressure)
        if (held && !supply) return 'Type the supply pressure above the grid first.'
        return held && supply
          ? { ...base, test: 'leak-down', entry: { form: 'differential', supply, held, ...rest } }
          : null
      }
      const percent = given(row.percent, readPercent)
      return percent === undefined
        ? null
        : {
            ...base,
            test: 'leak-down',
            entry: { form: 'percent', percent, ...(supply && { regulated: supply }), ...rest },
          }
    },
    pullsEach: 1,
  }
}

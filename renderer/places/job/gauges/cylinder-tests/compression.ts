// Compression by cylinder: first puff and final, dry and wet; puffs, battery, speed and the held reading on request.
import { compressionBars } from '../../../../../shared/gauges/bars.ts'
import type { Pressure } from '../../../../../shared/units/quantity.ts'
import { toPressure } from '../../../../../shared/units/convert.ts'
import { formatPressure } from '../../../../../shared/units/format.ts'
import { parsePressure } from '../../../../../shared/units/parse.ts'
import type { BarProps } from '../bar.tsx'
import { given } from '../entry/field.ts'
import { readCrankingRpm, readMillilitres, readPuffs, readVolts } from '../entry/read-number.ts'
import type { DefineCylinderTest } from './cylinder-test.ts'

/** Above this a cranking pull is more likely a slip of the hand or the wrong unit. */
const unusualPsi = 400

export const compressionTest: DefineCylinderTest = ({ pressure: unit }) => {
  const pressure = (text: string): Pressure | null => parsePressure(text, unit)
  return {
    test: 'compression',
    settings: [
      { name: 'wet', title: 'The next pulls are', kind: 'choice', options: ['dry', 'wet'], needed: true },
    ],
    initial: { wet: 'dry' },
    columns: settings => [
      { name: 'first', title: 'First puff', unit, kind: 'number', parse: pressure },
      { name: 'final', title: 'Final', unit, kind: 'number', parse: pressure },
      ...(settings.wet === 'wet'
        ? [{ name: 'oil', title: 'Oil', unit: 'ml', kind: 'number', parse: readMillilitres } as const]
        : []),
      { name: 'puffs', title: 'Puffs', kind: 'number', parse: readPuffs, more: true },
      { name: 'volts', title: 'Battery', unit: 'V', kind: 'number', parse: readVolts, more: true },
      { name: 'rpm', title: 'Cranking', unit: 'rpm', kind: 'number', parse: readCrankingRpm, more: true },
      { name: 'held', title: 'Reading', kind: 'choice', options: ['held', 'fell back'], more: true },
    ],
    pull: (row, base, settings) => {
      const final = given(row.final, pressure)
      if (!final) return null
      const firstPuff = given(row.first, pressure)
      const oilMillilitres = given(row.oil, readMillilitres)
      const puffs = given(row.puffs, readPuffs)
      const batteryVolts = given(row.volts, readVolts)
      const crankingRpm = given(row.rpm, readCrankingRpm)
      const isWet = settings.wet === 'wet'
      return {
        ...base,
        test: 'compression',
        entry: {
          final,
          ...(firstPuff && { firstPuff }),
          ...(isWet && { wet: true }),
          ...(isWet && oilMillilitres !== undefined && { oilMillilitres }),
          ...(puffs !== undefined && { puffs }),
          ...(batteryVolts !== undefined && { batteryVolts }),
          ...(crankingRpm !== undefined && { crankingRpm }),
          ...(row.held && { held: row.held === 'held' }),
        },
      }
    },
    ask: pull => {
      if (pull.test !== 'compression') return undefined
      const { final, firstPuff } = pull.entry
      if (toPressure(final, 'psi') > unusualPsi)
        return `${formatPressure(final, unit)} on cylinder ${pull.cylinder} is unusual. It is kept; void it if it was a slip.`
      return firstPuff && toPressure(firstPuff, 'psi') > toPressure(final, 'psi')
        ? `First puff above final on cylinder ${pull.cylinder}. It is kept; void it if it was a slip.`
        : undefined
    },
    pullsEach: 2,
    pictures: (job, stage) => {
      const { values, limits } = compressionBars(job, stage)
      const full = Math.max(1, ...values.flatMap(value => [value.dry ?? 0, value.wet ?? 0])) * 1.08
      const bars = values.flatMap(value =>
        value.dry === undefined
          ? []
          : [
              [
                value.cylinder,
                {
                  value: value.dry,
                  full,
                  inner: value.firstPuff,
                  wet: value.wet,
                  plusMinus: value.plusMinus,
                  limits,
                  label: `Cylinder ${value.cylinder}: ${formatPressure({ value: value.dry, unit: 'psi' }, unit)}`,
                } satisfies BarProps,
              ] as const,
            ],
      )
      const lines = limits.length > 0 ? `; lines: ${limits.map(one => one.label).join(', ')}` : ''
      return { title: `Final, first puff inside${lines}`, bars: new Map(bars) }
    },
  }
}

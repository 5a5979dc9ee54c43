// Cylinder balance: speed before and after each cut-out and once it works again, vacuum on request.
import { balanceRules } from '../../../../../shared/gauges/balance-share.ts'
import { balanceBars } from '../../../../../shared/gauges/bars.ts'
import type { BalanceEntry } from '../../../../../shared/gauges/balance-entry.ts'
import type { Vacuum } from '../../../../../shared/units/quantity.ts'
import { parseVacuum } from '../../../../../shared/units/parse.ts'
import type { BarProps } from '../bar.tsx'
import { chosen, given } from '../entry/field.ts'
import { readRpm } from '../entry/read-number.ts'
import type { DefineCylinderTest } from './cylinder-test.ts'

const cuts: readonly NonNullable<BalanceEntry['cut']>[] = ['injector', 'command function', 'grounded probe']
const share = `${balanceRules.weakShare}\u00a0% of the others’ middle`

export const balanceTest: DefineCylinderTest = ({ vacuum: unit }) => {
  const vacuum = (text: string): Vacuum | null => parseVacuum(text, unit)
  return {
    test: 'balance',
    settings: [{ name: 'cut', title: 'Cut out by', kind: 'choice', options: cuts }],
    initial: {},
    columns: () => [
      { name: 'before', title: 'Before', unit: 'rpm', kind: 'number', parse: readRpm },
      { name: 'after', title: 'Cut out', unit: 'rpm', kind: 'number', parse: readRpm },
      { name: 'restored', title: 'Restored', unit: 'rpm', kind: 'number', parse: readRpm },
      { name: 'vacuumBefore', title: 'Vacuum before', unit, kind: 'number', parse: vacuum, more: true },
      { name: 'vacuumAfter', title: 'Vacuum cut out', unit, kind: 'number', parse: vacuum, more: true },
    ],
    pull: (row, base, settings) => {
      const rpmBefore = given(row.before, readRpm)
      const rpmAfter = given(row.after, readRpm)
      if (rpmBefore === undefined || rpmAfter === undefined) return null
      const rpmRestored = given(row.restored, readRpm)
      const vacuumBefore = given(row.vacuumBefore, vacuum)
      const vacuumAfter = given(row.vacuumAfter, vacuum)
      const cut = chosen(settings.cut, cuts)
      return {
        ...base,
        test: 'balance',
        entry: {
          rpmBefore,
          rpmAfter,
          ...(rpmRestored !== undefined && { rpmRestored }),
          ...(vacuumBefore && { vacuumBefore }),
          ...(vacuumAfter && { vacuumAfter }),
          ...(cut && { cut }),
        },
      }
    },
    pullsEach: 1,
    pictures: (job, stage) => {
      const { values } = balanceBars(job, stage)
      const full = Math.max(1, ...values.map(value => value.drop)) * 1.08
      const bars = values.map(
        value =>
          [
            value.cylinder,
            {
              value: value.drop,
              full,
              plusMinus: value.plusMinus,
              limits: value.limit === undefined ? [] : [{ at: value.limit, label: share }],
              label: `Cylinder ${value.cylinder}: drop ${Math.round(value.drop)} rpm`,
            } satisfies BarProps,
          ] as const,
      )
      return { title: `Drop, line at ${share}`, bars: new Map(bars) }
    },
  }
}

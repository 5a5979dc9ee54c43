// What trims say together: idle beside 2500 rpm on one bank, and one bank beside the other.
import type { Layout } from '../engine/layout-schema.ts'
import { inWords } from './shown.ts'
import type { TrimValue } from './trim-values.ts'
import type { GaugeVerdict } from './verdict.ts'

type Called = { value: TrimValue; verdict: GaugeVerdict }
export type BankTrims = { bank: number; states: readonly Called[] }

type Side = 'added' | 'taken off' | 'normal'

/** Null where it cannot be called, or where a false lean stands in the way. */
const sideOf = ({ states }: BankTrims, state: TrimValue['state']): Side | null => {
  const one = states.find(({ value }) => value.state === state)
  if (one === undefined || one.verdict.verdict === 'cannot be called') return null
  if (one.verdict.verdict === 'within') return 'normal'
  return one.value.total > 0 ? 'added' : 'taken off'
}

const source = 'articles on fuel trim; technician certification study pages'

const words: Readonly<Record<Side, Readonly<Record<Side, string>>>> = {
  added: {
    normal:
      'Added at idle and normal at 2500 rpm: unmetered air, which matters less as the engine takes more.',
    added: 'Added at both: fuel delivery (pressure, filter, pump, injectors) or an air meter that reads low.',
    'taken off':
      'Added at idle, taken off at 2500 rpm: no single cause fits; read both again, look at the air meter.',
  },
  normal: {
    normal: 'Normal at both.',
    added: 'Normal at idle and added at 2500 rpm: delivery that cannot follow. Read the pressure under load.',
    'taken off': 'Normal at idle, taken off at 2500 rpm: purge, pressure, or an air meter that reads high.',
  },
  'taken off': {
    normal: 'Taken off at idle only: a leaking injector, purge stuck open, fuel in the oil.',
    'taken off': 'Taken off at both: leaking injector, pressure too high, purge stuck open.',
    added:
      'Taken off at idle, added at 2500 rpm: no single cause fits; read both again, look at the air meter.',
  },
}

/** One remark for a bank read at idle and at 2500 rpm. */
export function bankPattern(bank: BankTrims, stage: GaugeVerdict['stage']): GaugeVerdict[] {
  const idle = bank.states.find(({ value }) => value.state === 'idle')
  const fast = bank.states.find(({ value }) => value.state === '2500 rpm')
  const [atIdle, atFast] = [sideOf(bank, 'idle'), sideOf(bank, '2500 rpm')]
  if (!idle || !fast || atIdle === null || atFast === null) return []
  return [
    {
      test: 'trims',
      rule: `bank ${bank.bank}, idle against 2500 rpm`,
      stage,
      value: Number((idle.value.total - fast.value.total).toFixed(1)),
      unit: '% apart',
      verdict: 'noted',
      limit: 'a pattern, not a number',
      why: words[atIdle][atFast],
      source,
    },
  ]
}

/** Where one bank is off and the other normal in the same state, what both share is cleared. */
export function bankAgainstBank(
  banks: readonly BankTrims[],
  layout: Layout,
  stage: GaugeVerdict['stage'],
): GaugeVerdict[] {
  if (banks.length !== 2) return []
  return (['idle', '2500 rpm', 'load'] as const).flatMap((state): GaugeVerdict[] => {
    const sides = banks.map(bank => ({ bank: bank.bank, side: sideOf(bank, state) }))
    const off = sides.filter(one => one.side === 'added' || one.side === 'taken off')
    const [one] = off
    if (off.length !== 1 || one === undefined || !sides.some(({ side }) => side === 'normal')) return []
    const totals = banks.flatMap(bank =>
      bank.states.flatMap(({ value }) => (value.state === state ? [value.total] : [])),
    )
    return [
      {
        test: 'trims',
        rule: `bank against bank ${state === 'load' ? 'under load' : `at ${state}`}`,
        stage,
        value: Number((Math.max(...totals) - Math.min(...totals)).toFixed(1)),
        unit: '% apart',
        verdict: 'noted',
        limit: 'a pattern, not a number',
        why: `Only bank ${one.bank}${cylindersWords(layout, one.bank)}: ${
          one.side === 'added'
            ? 'an air leak or injectors of that bank, an exhaust leak ahead of its sensor, or that sensor.'
            : 'a leaking injector of that bank, or its sensor.'
        } Pressure and air meter serve both.`,
        source,
      },
    ]
  })
}

/** Bank 1 is the bank of cylinder 1; a single row of cylinders may have two sensors, and then nothing is named. */
function cylindersWords({ banks }: Layout, bank: number): string {
  if (banks.length !== 2 || bank > 2) return ''
  const first = banks.find(one => one.cylinders.includes(1))
  const chosen = bank === 1 ? first : banks.find(one => one !== first)
  return chosen ? ` (cylinders ${inWords(chosen.cylinders)})` : ''
}

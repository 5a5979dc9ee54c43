// A swap: which part went from where to where, and what the fault did.
import type { SwapEntry } from '../../../../../shared/gauges/swap-entry.ts'
import { chosen, given, isBlank } from '../entry/field.ts'
import { readCylinder } from '../entry/read-number.ts'
import type { DefineEngineTest } from './engine-test.ts'

const parts: readonly SwapEntry['part'][] = ['plug', 'lead', 'coil', 'injector', 'other']
const results: readonly SwapEntry['result'][] = [
  'followed the part',
  'stayed',
  'gone',
  'on both',
  'did not come back',
]
const watchedBy: readonly NonNullable<SwapEntry['watched']>[] = [
  'misfire counts',
  'balance',
  'spark',
  'plug',
  'by ear',
]

export const swapTest: DefineEngineTest = () => ({
  test: 'swap',
  keepWords: 'Keep the swap',
  needs: 'Choose the part and the result, and type the cylinder it came from.',
  initial: {},
  stays: [],
  fields: ({ part }) => [
    { name: 'part', title: 'Part', kind: 'choice', options: parts },
    ...(part === 'other' ? [{ name: 'named', title: 'Named', kind: 'text', mostLetters: 80 } as const] : []),
    { name: 'from', title: 'From cylinder', kind: 'number', parse: readCylinder },
    {
      name: 'to',
      title: 'To cylinder (blank: a known good part was fitted)',
      kind: 'number',
      parse: readCylinder,
    },
    { name: 'result', title: 'The fault', kind: 'choice', options: results },
    { name: 'watched', title: 'Seen by', kind: 'choice', options: watchedBy },
    { name: 'intermittent', title: 'It comes and goes', kind: 'choice', options: ['yes'] },
  ],
  pull: (typed, base) => {
    const part = chosen(typed.part, parts)
    const from = given(typed.from, readCylinder)
    const to = given(typed.to, readCylinder)
    const result = chosen(typed.result, results)
    const watched = chosen(typed.watched, watchedBy)
    if (!part || from === undefined || !result) return null
    if (from === to) return 'From and to are the same cylinder.'
    return {
      ...base,
      test: 'swap',
      entry: {
        part,
        ...(part === 'other' && !isBlank(typed.named) && { named: (typed.named ?? '').trim() }),
        from,
        ...(to !== undefined && { to }),
        result,
        ...(watched && { watched }),
        ...(typed.intermittent === 'yes' && { intermittent: true }),
      },
    }
  },
})

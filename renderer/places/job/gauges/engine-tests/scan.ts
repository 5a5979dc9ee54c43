// Trouble codes, typed or pasted, and the raw answers of service 06.
import type { TroubleCodesEntry } from '../../../../../shared/gauges/scan-entries.ts'
import { chosen, given, isBlank } from '../entry/field.ts'
import { readCodes } from '../entry/read-codes.ts'
import type { DefineEngineTest } from './engine-test.ts'

type Code = TroubleCodesEntry['codes'][number]

const states: readonly NonNullable<Code['state']>[] = ['stored', 'pending', 'permanent']

export const troubleCodesTest: DefineEngineTest = () => ({
  test: 'trouble codes',
  keepWords: 'Keep the codes',
  needs: 'Type the codes, or choose "no codes found".',
  initial: { found: 'codes' },
  stays: [],
  fields: ({ found }) => [
    { name: 'found', title: 'Read', kind: 'choice', options: ['codes', 'no codes found'], needed: true },
    ...(found === 'no codes found'
      ? []
      : [
          {
            name: 'codes',
            title: 'Codes, e.g. P0302 P0171',
            kind: 'text',
            mostLetters: 2000,
            parse: readCodes,
          } as const,
          { name: 'state', title: 'They are', kind: 'choice', options: states } as const,
        ]),
  ],
  pull: (typed, base) => {
    const none = typed.found === 'no codes found'
    const codes = none ? [] : given(typed.codes, readCodes)
    const state = chosen(typed.state, states)
    if (!codes) return null
    return {
      ...base,
      test: 'trouble codes',
      entry: { codes: codes.map(code => ({ code, ...(state && { state }) })) },
    }
  },
})

export const mode06Test: DefineEngineTest = () => ({
  test: 'mode 06',
  keepWords: 'Keep the answers',
  needs: 'Paste the answers of the control unit first.',
  initial: {},
  stays: [],
  fields: () => [
    {
      name: 'hex',
      title: 'Answers as hexadecimal bytes, one frame a line',
      kind: 'text',
      lines: 8,
      mostLetters: 20_000,
    },
  ],
  pull: (typed, base) =>
    isBlank(typed.hex) ? null : { ...base, test: 'mode 06', entry: { hex: (typed.hex ?? '').trim() } },
})

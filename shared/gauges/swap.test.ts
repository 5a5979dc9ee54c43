import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Pull } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { judgeSwap } from './swap.ts'
import { swapParts, swapResults, type SwapEntry } from './swap-entry.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { misfires, swap } from './testing/make-pull.ts'
import type { Verdict } from './verdict.ts'

const judge = (pulls: Pull[], stage: Stage = 'as found') => judgeSwap(jobWith({ pulls }), stage)
const one = (entry: Partial<SwapEntry>) =>
  judge([swap({ part: 'coil', from: 3, to: 5, result: 'stayed', ...entry })])[0]
/** A known-good part fitted: nothing went to another cylinder. */
const knownGood = (result: SwapEntry['result'], more: Partial<SwapEntry> = {}) =>
  judge([swap({ part: 'coil', from: 3, result, ...more })])[0]

describe('a part moved from 3 to 5', () => {
  it.each([
    ['followed the part', 'outside', 'proven'],
    ['stayed', 'within', 'cleared'],
    ['gone', 'cannot be called', 'proves no part'],
    ['on both', 'cannot be called', 'two faults'],
    ['did not come back', 'cannot be called', 'proves nothing'],
  ] as const)('%s: %s', (result, verdict, words) => {
    const found = one({ result })
    expect(found).toMatchObject({ cylinder: 3, rule: 'coil to cylinder 5', verdict })
    expect(found?.why).toContain(words)
  })
  it('that comes and goes proves less when it follows, and clears as well when it stays', () => {
    expect(one({ result: 'followed the part', intermittent: true })?.verdict).toBe('watch')
    expect(one({ result: 'stayed', intermittent: true })?.verdict).toBe('within')
  })
  it('with another: staying clears both, following proves neither', () => {
    const also: SwapEntry['also'] = ['plug', 'coil']
    const verdicts = (result: SwapEntry['result']) =>
      judge([swap({ part: 'coil', also, from: 3, to: 5, result })]).map(({ rule, verdict }) => [
        rule,
        verdict,
      ])
    expect(verdicts('stayed')).toEqual([
      ['coil to cylinder 5', 'within'],
      ['plug to cylinder 5', 'within'],
    ])
    expect(verdicts('followed the part')).toEqual([
      ['coil to cylinder 5', 'cannot be called'],
      ['plug to cylinder 5', 'cannot be called'],
    ])
  })
  it('to its own cylinder moves nothing', () => {
    expect(one({ to: 3 })).toMatchObject({ verdict: 'cannot be called', about: 'reading' })
  })
  it('named by a person goes by that name', () => {
    expect(one({ part: 'other', named: 'igniter' })?.rule).toBe('igniter to cylinder 5')
  })
})

describe('companions', () => {
  // In 1-5-3-6-2-4 cylinder 3 has 4 half a cycle away.
  it('that may share a coil are said', () => {
    expect(one({ to: 4 })?.why).toContain('this holds for a coil each')
    expect(one({ to: 4, part: 'lead', result: 'followed the part' })?.why).toContain('shows at either end')
    expect(one({ to: 4, result: 'on both' })?.why).toContain('shared coil or its driver first')
  })
  it('are not named for an injector, nor for another cylinder', () => {
    expect(one({ to: 4, part: 'injector' })?.why).not.toContain('companions')
    expect(one({ to: 5 })?.why).not.toContain('companions')
  })
})

describe('a known-good part', () => {
  it.each([
    ['gone', 'outside', 'proven bad'],
    ['stayed', 'within', 'cleared'],
    ['did not come back', 'cannot be called', 'proves nothing'],
    ['followed the part', 'cannot be called', 'nothing can follow'],
    ['on both', 'cannot be called', 'nothing can follow'],
  ] as const)('%s: %s', (result, verdict, words) => {
    expect(knownGood(result)).toMatchObject({ rule: 'known-good coil', verdict })
    expect(knownGood(result)?.why).toContain(words)
  })
  it('does not prove a fault that comes and goes, nor one of two', () => {
    expect(knownGood('gone', { intermittent: true })?.verdict).toBe('cannot be called')
    expect(knownGood('gone', { also: ['plug'] })?.verdict).toBe('cannot be called')
  })
})

it('swaps alike are taken together; a contradiction is no proof', () => {
  const moved = (result: SwapEntry['result']) => swap({ part: 'plug', from: 2, to: 6, result })
  expect(judge([moved('did not come back'), moved('followed the part')])).toMatchObject([
    { verdict: 'outside', value: 2, unit: 'swaps' },
  ])
  expect(judge([moved('stayed'), moved('followed the part')])).toMatchObject([
    { verdict: 'cannot be called' },
  ])
  expect(judge([voided(moved('stayed')), swap({ part: 'plug', from: 9, to: 1, result: 'stayed' })])).toEqual(
    [],
  )
})

describe('after the repair', () => {
  const proven = swap({ part: 'coil', from: 3, to: 5, result: 'followed the part' })
  const after = { stage: 'after repair' } as const
  const counts = (ofThird: number) =>
    [1, 2, 3, 4].map(cylinder => misfires(cylinder, cylinder === 3 ? ofThird : 0, 'this drive', after))
  it('the proven part is held against the counts of its cylinder', () => {
    expect(judge([proven, ...counts(0)], 'after repair')).toMatchObject([
      { cylinder: 3, rule: 'coil to cylinder 5', stage: 'after repair', verdict: 'within' },
    ])
    expect(judge([proven, ...counts(90)], 'after repair')).toMatchObject([{ verdict: 'outside' }])
  })
  it('nothing is said without them', () => {
    expect(judge([proven], 'after repair')).toEqual([])
  })
})

const mayBe: Readonly<Record<SwapEntry['result'], readonly Verdict[]>> = {
  'followed the part': ['outside', 'cannot be called'],
  stayed: ['within', 'cannot be called'],
  gone: ['outside', 'cannot be called'],
  'on both': ['cannot be called'],
  'did not come back': ['cannot be called'],
}

it('what did not come back never proves or clears, whatever was moved', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...swapParts),
      fc.option(fc.integer({ min: 1, max: 6 }), { nil: undefined }),
      fc.integer({ min: 1, max: 6 }),
      fc.constantFrom(...swapResults),
      (part, to, from, result) => {
        const [found] = judge([swap({ part, from, result, ...(to === undefined ? {} : { to }) })])
        expect(found?.cylinder).toBe(from)
        expect(mayBe[result]).toContain(found?.verdict)
      },
    ),
  )
})

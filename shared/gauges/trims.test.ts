import { describe, expect, it } from 'vitest'
import type { Circumstances } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import type { TrimsEntry } from './fuel-entries.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { misfires, observed, trims } from './testing/make-pull.ts'
import { judgeTrims } from './trims.ts'

const read = (bank: number, state: TrimsEntry['state'], longTerm: number, more: Partial<TrimsEntry> = {}) =>
  trims({ bank, state, longTerm, shortTerm: 0, closedLoop: true, ...more })
const warm: Circumstances = { engineWarm: true }
const judge = (pulls: Pull[], circumstances = warm) =>
  judgeTrims(jobWith({ pulls, circumstances, layout: 'v6-oddeven-123456' }), 'as found')
const pattern = (idle: number, fast: number) =>
  judge([read(1, 'idle', idle), read(1, '2500 rpm', fast)]).find(one => one.rule.includes('against 2500'))
    ?.why

describe('short and long together', () => {
  it.each([
    [0, 0, 'within'],
    [8, 0.5, 'within'],
    [4, 6, 'cannot be called'],
    [6, 8, 'outside'],
    [-12, -4, 'outside'],
    [20, -15, 'within'],
  ] as const)('%d and %d percent: %s', (longTerm, shortTerm, verdict) => {
    expect(judge([read(1, 'idle', longTerm, { shortTerm })])).toMatchObject([
      { rule: 'bank 1 at idle', value: longTerm + shortTerm, verdict, unit: '%' },
    ])
  })
  it("follow the shop's rule set", () => {
    const at = (id: string) => judge([read(1, 'idle', 12)], { ...warm, rules: { trims: id } })[0]?.verdict
    expect(at('trims-8')).toBe('outside')
    expect(at('trims-15')).toBe('within')
  })
  it('say which of the two was not read', () => {
    expect(judge([trims({ bank: 1, state: 'idle', longTerm: 3 })])[0]?.why).toContain('long only')
    expect(judge([trims({ bank: 1, state: 'idle' })])).toEqual([])
  })
})

describe('they cannot be called', () => {
  it('in open loop or cold', () => {
    expect(judge([read(1, 'idle', 20, { closedLoop: false })])[0]).toMatchObject({
      verdict: 'cannot be called',
      about: 'reading',
    })
    expect(judge([read(1, 'idle', 20)], { engineWarm: false })[0]?.verdict).toBe('cannot be called')
    expect(judge([read(1, 'idle', 20)], {})[0]?.why).toContain('Nobody said closed loop and warm')
  })
  it('lean, with a dead cylinder or a blowing exhaust; rich all the same', () => {
    const dead = [1, 2, 3, 4, 5, 6].map(cylinder => misfires(cylinder, cylinder === 3 ? 200 : 0))
    const lean = judge([read(1, 'idle', 20), ...dead])
    expect(lean[0]).toMatchObject({ verdict: 'cannot be called' })
    expect(lean[0]?.why).toContain('cylinder 3')
    expect(judge([read(1, 'idle', 20), observed('exhaust blows')])[0]?.why).toContain('exhaust blows')
    expect(judge([read(1, 'idle', 20), observed('exhaust blows', 'no')])[0]?.verdict).toBe('outside')
    expect(judge([read(1, 'idle', -20), ...dead])[0]?.verdict).toBe('outside')
  })
})

describe('idle against 2500 rpm', () => {
  it.each([
    [18, 2, 'unmetered air'],
    [18, 17, 'fuel delivery'],
    [2, 18, 'delivery that cannot follow'],
    [-18, -17, 'leaking injector, pressure too high, purge'],
    [1, 2, 'Normal at both'],
  ] as const)('%d and %d percent', (idle, fast, words) => {
    expect(pattern(idle, fast)).toContain(words)
  })
  it('says nothing where one of them cannot be called', () => {
    expect(pattern(10, 2)).toBeUndefined()
  })
})

describe('one bank', () => {
  const against = (one: number, two: number) =>
    judge([read(1, 'idle', one), read(2, 'idle', two)]).find(verdict =>
      verdict.rule.startsWith('bank against'),
    )
  it('off clears what both share, and names its cylinders', () => {
    expect(against(20, 1)?.why).toContain('Only bank 1 (cylinders 1, 3 and 5)')
    expect(against(1, -20)?.why).toContain('bank 2 (cylinders 2, 4 and 6): a leaking injector')
  })
  it('is not said when both are off or both normal', () => {
    expect(against(20, 20)).toBeUndefined()
    expect(against(1, 2)).toBeUndefined()
  })
})

it('takes no notice of voided pulls, whatever the order', () => {
  const pulls = [read(1, 'idle', 2), read(1, 'idle', 6), voided(read(1, 'idle', 25)), read(2, 'load', 3)]
  expect(judge(pulls)).toEqual(judge(pulls.toReversed()))
  expect(judge(pulls)[0]).toMatchObject({ value: 4, plusMinus: 2 })
})

import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { RuleChoice } from './rule-choice-schema.ts'
import { judgeInjectorBalance } from './injector-balance.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { injectorDrop } from './testing/make-pull.ts'

const kPa = (value: number) => ({ value, unit: 'kPa' as const })
const pulse = (cylinder: number, drop: number, before = 380) =>
  injectorDrop(cylinder, { before: kPa(before), after: kPa(before - drop) })
const judge = (drops: readonly number[], injectorBalance: RuleChoice['injectorBalance'] = 'injector-10') =>
  judgeInjectorBalance(
    jobWith({
      pulls: drops.map((drop, i) => pulse(i + 1, drop)),
      circumstances: { rules: injectorBalance === undefined ? {} : { injectorBalance } },
    }),
    'as found',
    { pressure: 'kPa', vacuum: 'kPa' },
  )

describe('drops against their average', () => {
  it('larger is rich, smaller is lean, by the rule set chosen', () => {
    const drops = [60, 60, 60, 60, 84, 36]
    const strict = judge(drops)
    expect(strict.map(one => one.verdict)).toEqual([
      'within',
      'within',
      'within',
      'within',
      'outside',
      'outside',
    ])
    expect(strict[4]).toMatchObject({ cylinder: 5, value: 24, unit: 'kPa' })
    expect(strict[4]?.why).toContain('rich')
    expect(strict[5]?.why).toContain('lean')
    expect(judge([60, 60, 60, 60, 74, 46], 'injector-20').map(one => one.verdict)).not.toContain('outside')
  })
  it('one dead injector does not make its sisters rich', () => {
    const verdicts = judge([60, 60, 60, 60, 60, 0])
    expect(verdicts[5]).toMatchObject({ verdict: 'outside' })
    expect(verdicts.filter(one => one.verdict === 'outside')).toHaveLength(1)
    const pulled = judge([60, 60, 60, 60, 0, 0])
    expect(pulled[0]).toMatchObject({ verdict: 'cannot be called' })
    expect(pulled[0]?.why).toContain('pulls the average')
  })
  it('near the limit cannot be called', () => {
    expect(judge([60, 60, 60, 60, 60, 72])[5]).toMatchObject({ verdict: 'cannot be called' })
  })
  it('of one alone are noted', () => {
    expect(judge([60])).toMatchObject([{ verdict: 'noted' }])
  })
  it('move with the cylinders', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 150 }), { minLength: 6, maxLength: 6 }),
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
        (drops, order) => {
          const called = (list: readonly number[]) =>
            judge(list).map(({ verdict, value }) => [verdict, value])
          const plain = called(drops)
          expect(called(order.map(from => drops[from] ?? 0))).toEqual(order.map(from => plain[from]))
        },
      ),
    )
  })
})

it('a pressure that rose, and pulses that start unevenly, speak of the reading', () => {
  const of = (...pulls: ReturnType<typeof pulse>[]) => judgeInjectorBalance(jobWith({ pulls }), 'as found')
  expect(of(pulse(1, 60), pulse(2, -60), pulse(3, 60)).filter(one => one.about === 'reading')).toMatchObject([
    { cylinder: 2, verdict: 'noted' },
  ])
  expect(of(pulse(1, 60), pulse(2, 60, 300))[0]).toMatchObject({
    rule: 'starting pressure',
    verdict: 'watch',
    about: 'reading',
  })
  expect(of(voided(pulse(1, 60)), pulse(9, 60))).toEqual([])
})

import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Pull } from '../job/pull-schema.ts'
import { judgeResistance } from './resistance.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { resistance } from './testing/make-pull.ts'
import type { CylinderVerdict } from './verdict.ts'

const judge = (pulls: Pull[]) => judgeResistance(jobWith({ pulls }), 'as found')
const lead = (cylinder: number, ohms: number, feet?: number) =>
  resistance(cylinder, {
    part: 'lead',
    ohms,
    ...(feet === undefined ? {} : { length: { value: feet * 12, unit: 'in' as const } }),
  })
const one = (verdicts: readonly CylinderVerdict[], cylinder: number, rule: string) =>
  verdicts.find(verdict => verdict.cylinder === cylinder && verdict.rule === rule)

describe('leads', () => {
  it.each([
    [29_000, 'noted'],
    [30_000, 'cannot be called'],
    [31_000, 'outside'],
  ] as const)('%d ohms in all: %s', (ohms, verdict) => {
    const found = one(judge([lead(1, ohms)]), 1, 'lead in all')
    expect(found).toMatchObject({ verdict, value: ohms / 1000, unit: 'kΩ' })
    expect(found?.limit).toContain('no limit holds for every lead')
  })
  it.each([
    [8000, 'within'],
    [11_000, 'watch'],
    [12_000, 'cannot be called'],
    [12_500, 'outside'],
  ] as const)('%d ohms a foot: %s', (each, verdict) => {
    const found = one(judge([lead(1, each * 2, 2)]), 1, 'lead by length')
    expect(found).toMatchObject({ verdict, unit: 'kΩ a foot' })
    expect(found?.limit).toContain('one text')
  })
  it('stand beside their sisters, by length where all have one', () => {
    const bare = judge([lead(1, 6000), lead(2, 5500), lead(3, 14_000)])
    expect(one(bare, 3, 'lead beside its sisters')).toMatchObject({ verdict: 'watch', unit: 'kΩ' })
    expect(one(bare, 1, 'lead beside its sisters')).toMatchObject({ verdict: 'within' })
    const measured = judge([lead(1, 6000, 1), lead(2, 5500, 1), lead(3, 14_000, 2.5)])
    expect(one(measured, 3, 'lead beside its sisters')).toMatchObject({
      verdict: 'within',
      unit: 'kΩ a foot',
    })
  })
  it('that are open are outside', () => {
    expect(judge([resistance(2, { part: 'lead', open: true })])).toMatchObject([
      { cylinder: 2, rule: 'lead, path', verdict: 'outside' },
    ])
  })
  it('that were open and have a path after the repair say so under the same rule', () => {
    const pulls = [
      resistance(2, { part: 'lead', open: true }),
      resistance(2, { part: 'lead', ohms: 4000 }, { stage: 'after repair' }),
    ]
    const after = judgeResistance(jobWith({ pulls }), 'after repair')
    expect(one(after, 2, 'lead, path')).toMatchObject({ verdict: 'noted', stage: 'after repair' })
  })
  it('move with the cylinders', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 100, max: 60_000 }), { minLength: 6, maxLength: 6 }),
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
        (ohms, order) => {
          const called = (list: readonly number[]) => {
            const verdicts = judge(list.map((value, i) => lead(i + 1, value, 2)))
            return list.map((_, i) =>
              verdicts
                .filter(verdict => verdict.cylinder === i + 1)
                .map(({ rule, verdict }) => [rule, verdict]),
            )
          }
          const plain = called(ohms)
          expect(called(order.map(from => ohms[from] ?? 0))).toEqual(order.map(from => plain[from]))
        },
      ),
    )
  })
})

describe('a typed range', () => {
  const coil = (ohms: number, minimum = 0.5, maximum = 1.5) =>
    judge([resistance(1, { part: 'coil primary', ohms, specified: { minimum, maximum } })])[0]
  it.each([
    [1, 'within'],
    [0.1, 'outside'],
    [0.6, 'cannot be called'],
    [1.9, 'outside'],
  ] as const)('%d ohms of 0.5 to 1.5: %s', (ohms, verdict) => {
    expect(coil(ohms)).toMatchObject({ verdict, rule: 'coil primary, specified', unit: 'Ω' })
  })
  it('wins over the general rules for its part', () => {
    const pulls = [resistance(1, { part: 'lead', ohms: 40_000, specified: { minimum: 0, maximum: 50_000 } })]
    expect(judge(pulls).map(({ rule, verdict }) => [rule, verdict])).toEqual([['lead, specified', 'within']])
  })
  it('that contradicts itself judges nothing', () => {
    expect(coil(1, 3, 2)).toMatchObject({ verdict: 'cannot be called', about: 'reading' })
  })
})

it('coils without a range are only noted, beside their sisters', () => {
  const verdicts = judge([
    resistance(1, { part: 'coil secondary', ohms: 9000 }),
    resistance(2, { part: 'coil secondary', ohms: 22_000 }),
    resistance(3, { part: 'coil secondary', open: true }),
  ])
  expect(verdicts.map(verdict => verdict.verdict)).toEqual(['noted', 'noted', 'cannot be called'])
  expect(verdicts[1]?.why).toContain('9\u00a0kΩ in its sisters')
})

describe('plugs', () => {
  it.each([
    [0.4, 'noted', 'plain plug'],
    [5000, 'noted', 'as a resistor plug'],
    [80_000, 'watch', 'may be failing'],
  ] as const)('%d ohms: %s', (ohms, verdict, words) => {
    const [found] = judge([resistance(1, { part: 'plug', ohms })])
    expect(found).toMatchObject({ verdict })
    expect(found?.why).toContain(words)
  })
  it.each([
    [20e6, 'within'],
    [10.05e6, 'cannot be called'],
    [2e6, 'outside'],
  ] as const)('insulation of %d ohms: %s', (ohms, verdict) => {
    expect(judge([resistance(1, { part: 'plug insulation', ohms })])).toMatchObject([{ verdict, unit: 'MΩ' }])
  })
  it('insulation without any path is sound', () => {
    expect(judge([resistance(1, { part: 'plug insulation', open: true })])).toMatchObject([
      { verdict: 'within' },
    ])
  })
})

it('takes the middle of readings; nothing of voided ones', () => {
  const verdicts = judge([lead(1, 9000), lead(1, 10_000), lead(1, 14_000), voided(lead(1, 50_000))])
  expect(one(verdicts, 1, 'lead in all')).toMatchObject({ value: 10, plusMinus: 2.5 })
})

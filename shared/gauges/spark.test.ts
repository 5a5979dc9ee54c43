import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Pull } from '../job/pull-schema.ts'
import { judgeSpark } from './spark.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { spark } from './testing/make-pull.ts'

const judge = (pulls: Pull[]) => judgeSpark(jobWith({ pulls }), 'as found')
const kilovolts = 40

describe('the spark at a tester', () => {
  it.each([
    ['strong', 'noted'],
    ['weak', 'watch'],
    ['intermittent', 'watch'],
    ['none', 'outside'],
  ] as const)('%s is %s', (kind, verdict) => {
    expect(judge([spark(2, { spark: kind, kilovolts })])).toMatchObject([
      { cylinder: 2, rule: 'spark at 40\u00a0kV', verdict, value: 1, unit: `of 1: ${kind}` },
    ])
  })
  it('in air is never proof under compression', () => {
    expect(judge([spark(1, { spark: 'strong', kilovolts })])[0]?.why).toContain('no proof')
  })
  it('counts by its worst try, whatever the order', () => {
    const tries = (['strong', 'none', 'strong'] as const).map(kind => spark(1, { spark: kind, kilovolts }))
    expect(judge(tries)).toMatchObject([{ verdict: 'outside', value: 1, unit: 'of 3: none' }])
    expect(judge(tries.toReversed())).toEqual(judge(tries))
  })
  it('without a setting asks for it; one gap has one name in either unit', () => {
    expect(judge([spark(1, { spark: 'weak' })])[0]?.why).toContain('at what gap')
    const gaps = [
      { value: 25.4, unit: 'mm' as const },
      { value: 1, unit: 'in' as const },
    ]
    expect(judge(gaps.map(gap => spark(1, { spark: 'strong', gap })))).toMatchObject([
      { rule: 'spark at 25.40\u00a0mm', unit: 'of 2: strong' },
    ])
  })
  it('of no cylinder points at what they share', () => {
    const all = judge([1, 2, 3].map(cylinder => spark(cylinder, { spark: 'none', kilovolts })))
    expect(all.every(one => one.why.includes('what all share'))).toBe(true)
    const some = judge([spark(1, { spark: 'none', kilovolts }), spark(2, { spark: 'strong', kilovolts })])
    expect(some[0]?.why).not.toContain('what all share')
  })
})

it('says where it tracks', () => {
  const verdicts = judge([
    spark(3, { spark: 'weak', kilovolts, tracks: 'boot' }),
    spark(4, { spark: 'strong', kilovolts, tracks: 'none seen' }),
  ])
  expect(verdicts.map(one => [one.cylinder, one.rule, one.verdict])).toEqual([
    [3, 'spark at 40\u00a0kV', 'watch'],
    [3, 'tracking', 'outside'],
    [4, 'spark at 40\u00a0kV', 'noted'],
    [4, 'tracking', 'noted'],
  ])
})

it('says every place that it tracks at, in one verdict', () => {
  const pulls = (['coil', 'none seen', 'boot'] as const).map(tracks => spark(3, { spark: 'weak', tracks }))
  const found = judge(pulls).find(one => one.rule === 'tracking')
  expect(found).toMatchObject({ verdict: 'outside', value: 2, unit: 'of 3: boot and coil' })
  expect(judge(pulls.toReversed())).toEqual(judge(pulls))
})

it('moves with the cylinders, and leaves out voided pulls and cylinders that are not there', () => {
  const kinds = fc.array(fc.constantFrom('strong' as const, 'weak' as const, 'none' as const), {
    minLength: 6,
    maxLength: 6,
  })
  fc.assert(
    fc.property(kinds, fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }), (list, order) => {
      const called = (of: typeof list) =>
        judge(of.map((kind, i) => spark(i + 1, { spark: kind, kilovolts }))).map(one => one.verdict)
      const plain = called(list)
      expect(called(order.map(from => list[from] ?? 'none'))).toEqual(order.map(from => plain[from]))
    }),
  )
  expect(judge([voided(spark(1, { spark: 'none' })), spark(9, { spark: 'none' })])).toEqual([])
})

import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeMisfireCounts } from './misfire-counts.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { misfires } from './testing/make-pull.ts'

const judge = (counts: readonly number[]) =>
  judgeMisfireCounts(
    jobWith({ pulls: counts.map((count, i) => misfires(i + 1, count, 'this drive')) }),
    'as found',
  )
const called = (counts: readonly number[]) => judge(counts).map(one => one.verdict)

describe('counts beside each other', () => {
  it.each([
    [
      [0, 0, 60, 0, 0, 0],
      ['within', 'within', 'outside', 'within', 'within', 'within'],
    ],
    [
      [0, 0, 0, 0, 0, 0],
      ['noted', 'noted', 'noted', 'noted', 'noted', 'noted'],
    ],
    [
      [1, 0, 0, 0, 0, 0],
      ['noted', 'noted', 'noted', 'noted', 'noted', 'noted'],
    ],
    [
      [3, 0, 0, 0, 0, 0],
      ['watch', 'noted', 'noted', 'noted', 'noted', 'noted'],
    ],
    [
      [80, 0, 0, 0, 75, 0],
      ['outside', 'within', 'within', 'within', 'outside', 'within'],
    ],
    [
      [80, 82, 79, 85, 75, 81],
      ['noted', 'noted', 'noted', 'noted', 'noted', 'noted'],
    ],
  ] as const)('%j', (counts, verdicts) => {
    expect(called(counts)).toEqual(verdicts)
  })
  it('alike in all say what they share', () => {
    expect(judge([80, 82, 79, 85, 75, 81])[0]?.why).toContain('all share')
  })
  it('move with the cylinders', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 6, maxLength: 6 }),
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
        (counts, order) => {
          const plain = called(counts)
          expect(called(order.map(from => counts[from] ?? 0))).toEqual(order.map(from => plain[from]))
        },
      ),
    )
  })
})

it('occasions are kept apart, the last reading counts, voided and unknown cylinders do not', () => {
  const pulls = [
    misfires(1, 40, 'idle'),
    misfires(1, 7, 'under load'),
    misfires(2, 3, 'idle', { minute: 1 }),
    misfires(2, 9, 'idle', { minute: 5 }),
    voided(misfires(3, 99)),
    misfires(9, 5),
  ]
  expect(
    judgeMisfireCounts(jobWith({ pulls }), 'as found').map(one => [one.cylinder, one.rule, one.value]),
  ).toEqual([
    [1, 'count, idle', 40],
    [1, 'count, under load', 7],
    [2, 'count, idle', 9],
  ])
})

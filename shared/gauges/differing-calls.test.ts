// Rule sets side by side: the same pulls, called differently by published limits.
import { describe, expect, it } from 'vitest'
import type { Circumstances } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import { differingCalls } from './differing-calls.ts'
import { jobWith, onePullEach, psi } from './testing/evidence-job.ts'

const calls = (finals: readonly number[], circumstances: Circumstances = {}) =>
  differingCalls(jobWith({ pulls: onePullEach(finals), circumstances }), 'as found')

describe('compression', () => {
  it('a cylinder that one set passes and another fails is shown with every call', () => {
    const found = calls([165, 150, 165, 165]).find(
      one => one.kind === 'compressionSpread' && one.cylinder === 2,
    )
    expect(found?.chosen).toBe('spread-20')
    expect(found?.calls.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['spread-20', 'within'],
      ['spread-15', 'cannot be called'],
      ['spread-10', 'outside'],
    ])
  })
  it('shares of the highest and of the average stand beside each other', () => {
    const found = calls([165, 118, 165, 165]).find(
      one => one.kind === 'compressionShare' && one.cylinder === 2,
    )
    expect(found?.calls.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['highest-75', 'outside'],
      ['highest-70-floor-100', 'cannot be called'],
      ['highest-90', 'outside'],
      ['average-80', 'outside'],
    ])
  })
  it('where all agree there is nothing to show', () => {
    expect(
      calls([165, 165, 165, 60]).filter(one => one.cylinder === 4 && one.kind === 'compressionSpread'),
    ).toEqual([])
    expect(calls([165, 166, 165, 165])).toEqual([])
  })
  it('names the choice of the job', () => {
    expect(calls([165, 150], { rules: { compressionSpread: 'spread-10' } })[0]?.chosen).toBe('spread-10')
  })
  it('a typed spread leaves nothing to choose', () => {
    expect(calls([165, 150, 118], { specification: { compressionSpread: psi(30) } })).toEqual([])
  })
})

it('leak-down: 23 % passes one limit and fails another', () => {
  const pull: PullOf<'leak-down'> = {
    id: 'leak-1',
    stage: 'as found',
    at: '2026-03-02T09:00:00Z',
    test: 'leak-down',
    cylinder: 1,
    entry: { form: 'percent', percent: 23 },
  }
  const [found] = differingCalls(jobWith({ pulls: [pull] }), 'as found')
  expect(found?.calls.map(one => one.verdict)).toEqual(['outside', 'within', 'watch'])
})

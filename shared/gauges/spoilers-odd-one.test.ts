// A cylinder that is odd in every test that sees sealing, or in one of them only.
import { describe, expect, it } from 'vitest'
import type { Pull, TestKind } from '../job/pull-schema.ts'
import { judgeAll } from './gauges.ts'
import { oddOnes } from './spoilers-odd-one.ts'
import { jobWith, onePullEach } from './testing/evidence-job.ts'
import type { Verdict } from './verdict.ts'

const verdict = (test: TestKind, call: Verdict, cylinder = 3) => ({
  test,
  rule: 'any',
  cylinder,
  stage: 'as found' as const,
  value: 1,
  unit: '%',
  verdict: call,
  limit: 'any',
  why: 'any',
  source: 'any',
})
const of = (...verdicts: ReturnType<typeof verdict>[]) =>
  oddOnes(verdicts, 'as found').map(one => [one.test, one.rule, one.cylinder])

describe('a cylinder', () => {
  it('odd in every test is one fault', () => {
    expect(of(verdict('compression', 'outside'), verdict('leak-down', 'outside'))).toEqual([
      ['compression', 'odd in every test', 3],
    ])
  })
  it('odd in one of them asks for that reading again', () => {
    expect(of(verdict('compression', 'within'), verdict('leak-down', 'outside'))).toEqual([
      ['leak-down', 'odd in one test only', 3],
    ])
  })
  it('odd in one of them and in a test of spark or fuel does not stand alone', () => {
    expect(
      of(verdict('compression', 'within'), verdict('balance', 'outside'), verdict('resistance', 'outside')),
    ).toEqual([])
  })
  it('cannot be told from one test, or from open calls', () => {
    expect(of(verdict('compression', 'outside'))).toEqual([])
    expect(of(verdict('compression', 'outside'), verdict('leak-down', 'cannot be called'))).toEqual([])
    expect(of(verdict('compression', 'outside'), verdict('leak-down', 'within', 4))).toEqual([])
    expect(of(verdict('compression', 'outside'), verdict('resistance', 'within'))).toEqual([])
  })
})

it('is found in a whole job', () => {
  const leak = [1, 2, 3, 4, 5, 6].map(
    (cylinder): Pull => ({
      id: `leak-${cylinder}`,
      stage: 'as found',
      at: '2026-03-02T09:00:00Z',
      test: 'leak-down',
      cylinder,
      entry: { form: 'percent', percent: 5 },
    }),
  )
  const job = jobWith({ pulls: [...onePullEach([150, 151, 90, 150, 152, 149]), ...leak] })
  const found = judgeAll(job, 'as found').filter(one => one.rule === 'odd in one test only')
  expect(found).toMatchObject([{ test: 'compression', cylinder: 3, about: 'reading' }])
  expect(found[0]?.why).toContain('cam lobe')
})

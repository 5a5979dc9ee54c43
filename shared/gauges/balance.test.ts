import { describe, expect, it } from 'vitest'
import type { Pull } from '../job/pull-schema.ts'
import { judgeBalance } from './balance.ts'
import { callShare } from './balance-share.ts'
import { cut, jobWith, voided } from './testing/evidence-job.ts'

const judge = (pulls: Pull[]) => judgeBalance(jobWith({ pulls }), 'as found')
/** One cut-out a cylinder from 800 rpm. */
const drops = (all: readonly number[]) => all.map((drop, i) => cut(i + 1, [800, 800 - drop]))
const verdictOf = (pulls: Pull[], cylinder: number, rule = 'speed drop') =>
  judge(pulls).find(one => one.cylinder === cylinder && one.rule === rule)

describe('share of the others’ middle drop, ± 10 around 100', () => {
  const others = [1, 2, 3, 4].map(cylinder => ({ cylinder, drop: 100, plusMinus: 0.001 }))
  const call = (drop: number, plusMinus = 10) =>
    callShare({ cylinder: 5, drop, plusMinus }, others, value => `${value}`).verdict
  it.each([
    [10, 'outside'],
    [11, 'outside'],
    [39.9, 'outside'],
    [40.1, 'cannot be called'],
    [50, 'cannot be called'],
    [59.9, 'cannot be called'],
    [60.1, 'watch'],
    [64.9, 'watch'],
    [65.1, 'within'],
    [100, 'within'],
    [150, 'within'],
  ] as const)('%d is %s', (drop, verdict) => {
    expect(call(drop)).toBe(verdict)
  })
})

it('calls a cylinder dead whose cut-out changes nothing', () => {
  const found = verdictOf(drops([90, 95, 0, 88, 92, 91]), 3)
  expect(found).toMatchObject({ verdict: 'outside', value: 0, unit: 'rpm' })
  expect(found?.why).toContain('not working')
})
it('calls it dead too when the speed rises', () => {
  expect(verdictOf(drops([90, 95, -12, 88]), 3)?.verdict).toBe('outside')
})
it('finds the dead ones where most are dead', () => {
  const pulls = drops([0, 2, 0, 90])
  expect(judge(pulls).map(one => one.verdict)).toEqual(['outside', 'outside', 'outside', 'within'])
})
it('calls a clearly small drop weak', () => {
  const found = verdictOf(drops([90, 95, 25, 88, 92, 91]), 3)
  expect(found?.verdict).toBe('outside')
  expect(found?.why).toContain('weak')
})
it('calls nothing while idle control makes up for every cut', () => {
  const verdicts = judge(drops([5, 8, 0, 6]))
  expect(verdicts.every(one => one.verdict === 'cannot be called')).toBe(true)
  expect(verdicts[0]?.why).toContain('idle control')
})
it('has nothing to compare a single cylinder with', () => {
  expect(judge(drops([90]))).toMatchObject([{ verdict: 'noted' }])
})

describe('vacuum beside speed', () => {
  const both = (cylinder: number, rpm: number, inHg: number) =>
    cut(cylinder, [800, 800 - rpm], [19, 19 - inHg])
  it('is judged alike', () => {
    const pulls = [both(1, 90, 2), both(2, 90, 2.1), both(3, 0, 0), both(4, 88, 1.9)]
    expect(verdictOf(pulls, 3, 'vacuum drop')).toMatchObject({ verdict: 'outside', unit: 'inHg' })
    expect(verdictOf(pulls, 3)).toMatchObject({ verdict: 'outside' })
    expect(verdictOf(pulls, 1, 'vacuum drop')).toMatchObject({ verdict: 'within', value: 2, plusMinus: 0.35 })
  })
  it('keeps a cylinder from being condemned when idle control holds the speed', () => {
    const pulls = [both(1, 90, 2), both(2, 90, 2), both(3, 0, 2), both(4, 90, 2)]
    expect(verdictOf(pulls, 3)).toMatchObject({ verdict: 'cannot be called' })
    expect(verdictOf(pulls, 3)?.why).toContain('vacuum drops as it should')
    expect(verdictOf(pulls, 3, 'vacuum drop')).toMatchObject({ verdict: 'within' })
  })
  it('counts only where both readings were taken', () => {
    const pulls = [cut(1, [800, 710]), both(2, 90, 2)]
    expect(verdictOf(pulls, 1, 'vacuum drop')).toBeUndefined()
    expect(verdictOf(pulls, 2, 'vacuum drop')).toMatchObject({ verdict: 'noted' })
  })
})

describe('repeats', () => {
  const twice = (a: number, b: number) => [cut(1, [800, 800 - a]), cut(1, [800, 800 - b]), cut(2, [800, 710])]
  it.each([
    [90, 110, 'within'],
    [90, 111, 'watch'],
  ] as const)('drops of %d and %d rpm: %s', (a, b, verdict) => {
    expect(verdictOf(twice(a, b), 1, 'repeat')).toMatchObject({ verdict, about: 'reading' })
  })
  it('are not asked of one cut-out', () => {
    expect(verdictOf(twice(90, 90), 2, 'repeat')).toBeUndefined()
  })
  it('leave voided cut-outs out', () => {
    expect(verdictOf([cut(1, [800, 710]), voided(cut(1, [800, 500])), cut(2, [800, 710])], 1, 'repeat')).toBe(
      undefined,
    )
  })
})

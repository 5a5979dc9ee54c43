import { describe, expect, it } from 'vitest'
import type { Job } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import { balanceShares, judgeBalance } from './balance.ts'
import { cut, jobWith } from './testing/evidence-job.ts'

type Control = 'fixed' | 'active' | undefined
const job = (pulls: Pull[], idleControl: Control): Job => ({
  ...jobWith({ pulls }),
  setUps:
    idleControl === undefined ? [] : [{ test: 'balance', stage: 'as found', conditions: { idleControl } }],
})
const weak = (rpm: number, inHg?: number) =>
  [1, 2, 3, 4, 5, 6].map(cylinder =>
    cylinder === 3
      ? cut(3, [800, 800 - rpm], inHg === undefined ? undefined : [19, 19 - inHg])
      : cut(cylinder, [800, 710], inHg === undefined ? undefined : [19, 17]),
  )
const speedOf = (pulls: Pull[], control: Control) =>
  judgeBalance(job(pulls, control), 'as found').find(one => one.cylinder === 3 && one.rule === 'speed drop')

describe('a cylinder that loses 20 of 90 rpm', () => {
  it('is weak with idle air fixed', () => {
    expect(speedOf(weak(20), 'fixed')?.verdict).toBe('outside')
    expect(speedOf(weak(20), 'fixed')?.why).not.toContain('dle control')
  })
  it('is weak, with the doubt said, where nobody noted idle control', () => {
    expect(speedOf(weak(20), undefined)).toMatchObject({ verdict: 'outside' })
    expect(speedOf(weak(20), undefined)?.why).toContain('Nobody noted whether idle control')
  })
  it('cannot be called by one cut with idle control at work', () => {
    expect(speedOf(weak(20), 'active')).toMatchObject({ verdict: 'cannot be called' })
    expect(speedOf(weak(0), 'active')).toMatchObject({ verdict: 'cannot be called' })
  })
  it('is called with idle control at work where a second cut or the vacuum says the same', () => {
    expect(speedOf([...weak(10), cut(3, [800, 792])], 'active')?.verdict).toBe('outside')
    expect(speedOf(weak(10, 0.1), 'active')?.why).toContain('vacuum says the same')
    expect(speedOf(weak(10, 0.1), 'active')?.verdict).toBe('outside')
  })
})

it('gives the shares a wider interval the less is known of idle control', () => {
  const width = (control: Control) =>
    balanceShares(job(weak(45), control), 'as found').find(one => one.cylinder === 3)?.speed?.plusMinus ??
    Number.NaN
  expect(width('fixed')).toBeLessThan(width(undefined))
  expect(width(undefined)).toBeLessThan(width('active'))
})
it('gives each cylinder its share of the others’ middle work', () => {
  const found = balanceShares(job(weak(45, 1), 'fixed'), 'as found')
  expect(found.map(one => one.speed?.percent)).toEqual([100, 100, 50, 100, 100, 100])
  expect(found[2]?.vacuum?.percent).toBe(50)
})
it('does not give a cylinder a share that nobody measured', () => {
  expect(balanceShares(job([cut(1, [800, 710])], 'fixed'), 'as found')).toEqual([{ cylinder: 1 }])
})

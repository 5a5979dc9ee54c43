import { describe, expect, it } from 'vitest'
import type { Pull } from '../job/pull-schema.ts'
import { judgeInjector } from './injector.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { injector } from './testing/make-pull.ts'

const judge = (pulls: Pull[]) => judgeInjector(jobWith({ pulls }), 'as found')

describe('click and pulse', () => {
  it('together tell the injector from its drive', () => {
    const verdicts = judge([
      injector(1, { click: 'clear', pulse: true }),
      injector(2, { click: 'none', pulse: true }),
      injector(3, { click: 'none', pulse: false }),
      injector(4, { click: 'faint' }),
    ])
    expect(verdicts.map(one => [one.cylinder, one.rule, one.verdict])).toEqual([
      [1, 'click', 'noted'],
      [1, 'drive pulse', 'noted'],
      [2, 'click', 'outside'],
      [2, 'drive pulse', 'noted'],
      [3, 'click', 'outside'],
      [3, 'drive pulse', 'outside'],
      [4, 'click', 'watch'],
    ])
    expect(verdicts[2]?.why).toContain('the injector itself')
    expect(verdicts[4]?.why).toContain('not driven')
    expect(verdicts[6]?.why).toContain('look for the drive pulse')
  })
  it('none driven at all points at what they share', () => {
    const verdicts = judge([injector(1, { pulse: false }), injector(2, { pulse: false })])
    expect(verdicts.every(one => one.why.includes('all share'))).toBe(true)
  })
  it('of several checks the worst counts; voided ones do not', () => {
    expect(
      judge([
        injector(1, { click: 'clear' }),
        injector(1, { click: 'faint' }),
        voided(injector(1, { click: 'none' })),
      ]),
    ).toMatchObject([{ verdict: 'watch', value: 2 }])
  })
})

it('windings stand beside their sisters', () => {
  const verdicts = judge([12, 12.4, 2, 12.2].map((ohms, i) => injector(i + 1, { ohms })))
  expect(verdicts.map(one => one.verdict)).toEqual(['noted', 'noted', 'watch', 'noted'])
})

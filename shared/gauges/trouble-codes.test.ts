import { describe, expect, it } from 'vitest'
import type { Pull } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { codes, misfires } from './testing/make-pull.ts'
import { judgeTroubleCodes } from './trouble-codes.ts'

const judge = (pulls: Pull[], stage: Stage = 'as found') => judgeTroubleCodes(jobWith({ pulls }), stage)
const after = { stage: 'after repair' } as const

describe('codes as found', () => {
  it('name a cylinder, or the engine', () => {
    const verdicts = judge([
      codes([{ code: 'P0303' }, { code: 'P0300' }, { code: 'P0171' }, { code: 'P0305', state: 'pending' }]),
    ])
    expect(verdicts.map(one => [one.rule, one.cylinder, one.verdict])).toEqual([
      ['P0171', undefined, 'noted'],
      ['P0300', undefined, 'outside'],
      ['P0303', 3, 'outside'],
      ['P0305', 5, 'watch'],
    ])
  })
  it('come once, with all states', () => {
    const verdicts = judge([
      codes([{ code: 'P0302', state: 'pending' }]),
      codes([{ code: 'P0302', state: 'permanent' }]),
    ])
    expect(verdicts).toMatchObject([{ verdict: 'outside', cylinder: 2 }])
    expect(verdicts[0]?.why).toContain('pending, permanent')
  })
  it('of a cylinder that the engine lacks speak of the reading', () => {
    expect(judge([codes([{ code: 'P0308' }])])).toMatchObject([{ verdict: 'noted', about: 'reading' }])
  })
  it('that are none are noted; voided ones are not read', () => {
    expect(judge([codes([])])).toMatchObject([{ rule: 'codes', value: 0, verdict: 'noted' }])
    expect(judge([voided(codes([{ code: 'P0302' }]))])).toEqual([])
  })
})

describe('codes after the repair', () => {
  const before = codes([{ code: 'P0303' }])
  const gone = (...pulls: Pull[]) => judge([before, codes([], after), ...pulls], 'after repair').at(-1)
  it('that are gone prove nothing by themselves', () => {
    expect(gone()).toMatchObject({ rule: 'P0303', cylinder: 3, verdict: 'cannot be called' })
    expect(gone()?.why).toContain('Clearing wipes it too')
  })
  it('are proven gone by counts of nought, not by counts that go on', () => {
    expect(gone(misfires(3, 0, 'this drive', after))).toMatchObject({ verdict: 'within' })
    expect(gone(misfires(3, 4, 'this drive', after))).toMatchObject({ verdict: 'cannot be called' })
    expect(gone(misfires(1, 0, 'this drive', after))).toMatchObject({ verdict: 'cannot be called' })
  })
})

// Which published rule judges compression, and which cylinders may be compared at all.
import { describe, expect, it } from 'vitest'
import type { Circumstances, Job } from '../job/job-schema.ts'
import { compressionBars } from './bars.ts'
import { judgeCompression } from './compression.ts'
import type { Instrument } from './instrument-schema.ts'
import { compression, jobWith, onePullEach, psi } from './testing/evidence-job.ts'

const one = (job: Job, cylinder: number, rule: string) =>
  judgeCompression(job, 'as found').find(found => found.cylinder === cylinder && found.rule === rule)

const by = (rules: Circumstances['rules'], finals: readonly number[]) =>
  jobWith({ pulls: onePullEach(finals), circumstances: { rules } })

describe('the rule set of the job', () => {
  it('judges the spread, and the verdict names it', () => {
    expect(one(by({}, [150, 138]), 2, 'below highest')?.verdict).toBe('within')
    expect(one(by({ compressionSpread: 'spread-10' }, [150, 130]), 2, 'below highest')).toMatchObject({
      verdict: 'outside',
      source: 'US Army TM 10-3930-618-20, para 2-12',
    })
  })
  it('judges the share of the highest', () => {
    const finals = [150, 109]
    expect(one(by({}, finals), 2, 'share of highest')?.verdict).toBe('outside')
    const seventy = by({ compressionShare: 'highest-70-floor-100' }, finals)
    expect(one(seventy, 2, 'share of highest')?.limit).toContain('70')
    expect(one(seventy, 2, 'share of highest')?.verdict).toBe('within')
  })
  it('makes the floor a limit where the set has one', () => {
    const low = by({ compressionShare: 'highest-70-floor-100' }, [97, 97])
    expect(one(low, 1, 'floor')?.verdict).toBe('outside')
    expect(one(by({}, [97, 97]), 1, 'usual floor')?.verdict).toBe('watch')
  })
  it('judges against the average', () => {
    const found = one(by({ compressionShare: 'average-80' }, [160, 160, 160, 100]), 4, 'share of average')
    expect(found).toMatchObject({ verdict: 'outside', value: 69 })
  })
  it('gives way to what is typed', () => {
    const job = jobWith({
      pulls: onePullEach([150, 110]),
      circumstances: {
        rules: { compressionSpread: 'spread-10' },
        specification: { compressionSpread: psi(60) },
      },
    })
    expect(one(job, 2, 'below highest')).toMatchObject({
      verdict: 'within',
      source: 'specification typed for this vehicle',
    })
  })
  it('is drawn where it is judged', () => {
    const bars = compressionBars(by({ compressionSpread: 'spread-15' }, [150, 140]), 'as found')
    expect(bars.limits.map(limit => limit.at)).toEqual([135, 112.5])
  })
})

describe('one cylinder above all others', () => {
  it('is named, since it makes them look low', () => {
    const job = by({}, [170, 205, 172, 168])
    expect(one(job, 2, 'stands above')).toMatchObject({ verdict: 'watch', value: 33 })
    expect(one(job, 1, 'below highest')?.verdict).toBe('outside')
  })
  it.each([[[170, 192, 172, 168]], [[170, 205, 172, 120]], [[170, 205]], [[170, 172, 168]]])(
    'is not seen in %j',
    finals => {
      const verdicts = judgeCompression(by({}, finals), 'as found')
      expect(verdicts.filter(found => found.rule === 'stands above')).toEqual([])
    },
  )
})

describe('testers', () => {
  const fine: Instrument = {
    id: 'fine',
    kind: 'compression gauge',
    name: 'Bench gauge',
    unit: 'psi',
    division: 1,
    accuracyPercent: 1,
    fullScale: 300,
  }
  const old: Instrument = { id: 'old', kind: 'compression gauge', name: 'Old gauge' }
  const on = (instrument: string, cylinder: number, final: number) => ({
    ...compression(cylinder, final),
    instrument,
  })
  const with2 = (pulls: ReturnType<typeof on>[]): Job => ({ ...jobWith({ pulls }), instruments: [fine, old] })

  it('narrow the interval between cylinders by their division; the class counts against a limit only', () => {
    const job = with2([on('fine', 1, 150), on('fine', 2, 131)])
    expect(one(job, 2, 'below highest')).toMatchObject({ verdict: 'within', value: 19, plusMinus: 0.7 })
    expect(one(job, 2, 'usual floor')?.plusMinus).toBe(3.5)
  })
  it('are not compared with each other, and that is said', () => {
    const job = with2([on('fine', 1, 150), on('fine', 2, 148), on('old', 3, 100)])
    expect(one(job, 3, 'below highest')).toBeUndefined()
    expect(one(job, 2, 'below highest')?.why).toContain('cylinder 1')
    expect(one(job, 3, 'one tester')).toMatchObject({ about: 'reading', verdict: 'watch' })
    expect(one(job, 3, 'one tester')?.why).toContain('Old gauge')
    expect(compressionBars(job, 'as found').limits).toEqual([])
  })
})

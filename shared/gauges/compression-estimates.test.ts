// Estimates beside compression readings: noted, never a limit; and the oil and hose that a tester and a wet pull bring.
import { describe, expect, it } from 'vitest'
import type { Circumstances, Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import { oilLiftPercent } from './compression-estimates.ts'
import { judgeCompression } from './compression.ts'
import { compression, jobWith, onePullEach } from './testing/evidence-job.ts'

const one = (job: Job, cylinder: number, rule: string) =>
  judgeCompression(job, 'as found').find(found => found.cylinder === cylinder && found.rule === rule)
const at = (finals: readonly number[], circumstances: Circumstances) =>
  jobWith({ pulls: onePullEach(finals), circumstances })

describe('the equal at sea level', () => {
  it('is the reading over the ratio of the air pressures', () => {
    const job = at([125], { altitude: { value: 5000, unit: 'ft' } })
    expect(one(job, 1, 'equal at sea level')).toMatchObject({ value: 150.2, verdict: 'noted' })
  })
  it('is left out at sea level and where nobody said', () => {
    expect(one(at([125], {}), 1, 'equal at sea level')).toBeUndefined()
    expect(one(at([125], { altitude: { value: 0, unit: 'm' } }), 1, 'equal at sea level')).toBeUndefined()
  })
})

describe('what the ratio makes plausible', () => {
  const of = (final: number) =>
    one(at([final], { specification: { compressionRatio: 8 } }), 1, 'plausible for the ratio')
  it('spans both estimates, marked as such', () => {
    expect(of(150)?.verdict).toBe('noted')
    expect(of(150)?.limit).toContain('estimate')
    expect(of(150)?.limit).toContain('137.3')
  })
  it('doubts a reading above all of them, and none below', () => {
    expect(of(320)).toMatchObject({ verdict: 'watch', about: 'reading' })
    expect(of(60)?.verdict).toBe('noted')
  })
})

describe('the same oil', () => {
  const wet = (cylinder: number, final: number, oilMillilitres: number): PullOf<'compression'> => {
    const pull = compression(cylinder, final, { wet: true })
    return { ...pull, entry: { ...pull.entry, oilMillilitres } }
  }
  const dry = onePullEach([100, 150, 152])
  it('is compared', () => {
    const found = one(jobWith({ pulls: [...dry, wet(1, 140, 15), wet(2, 165, 15)] }), 1, 'wet rise')
    expect(found?.why).toContain('clearly more')
    expect(found?.limit).toContain('65')
  })
  it('and not another amount', () => {
    const found = one(jobWith({ pulls: [...dry, wet(1, 140, 15), wet(2, 165, 5)] }), 1, 'wet rise')
    expect(found?.why).toContain('give a good cylinder the same oil')
    expect(found?.why).toContain('another amount')
  })
  it('that fills the chamber has no bound', () => {
    expect(oilLiftPercent(44, 400, 44)).toBeNull()
  })
})

it('a long hose explains a low first puff, a short one does not', () => {
  const withHose = (hoseMillilitres: number): Job => ({
    ...jobWith({ pulls: [{ ...compression(1, 150, { firstPuff: 90 }), instrument: 'g' }] }),
    instruments: [{ id: 'g', kind: 'compression gauge', name: 'Invented', hoseMillilitres }],
  })
  expect(one(withHose(25), 1, 'first puff')).toMatchObject({ verdict: 'cannot be called' })
  expect(one(withHose(1), 1, 'first puff')).toMatchObject({ verdict: 'watch' })
})

// What is drawn is what was read, in the unit shown.
import { describe, expect, it } from 'vitest'
import { compression, cut, jobWith } from '../../../../../shared/gauges/testing/evidence-job.ts'
import { pictureData } from './picture-data.ts'

const units = { pressure: 'kPa', vacuum: 'inHg' } as const

describe('the picture of a test', () => {
  it('draws cylinders that were read, dry beside wet, first puff inside, in the unit shown', () => {
    const job = jobWith({
      pulls: [
        compression(1, 100, { firstPuff: 60 }),
        compression(1, 110, { wet: true }),
        compression(2, 100),
      ],
    })
    const data = pictureData(job, 'compression', 'as found', units)
    expect(data?.rows.map(row => row.cylinder)).toEqual([1, 2])
    // 1 psi is 6.894757 kPa (NIST SP 811, appendix B).
    expect(data?.rows[0]?.value).toBeCloseTo(689.48, 1)
    expect(data?.rows[0]?.firstPuff).toBeCloseTo(413.69, 1)
    expect(data?.rows[0]?.wet).toBeCloseTo(758.42, 1)
    expect(data?.rows[1]?.wet).toBeUndefined()
  })
  it('draws the drop that is judged', () => {
    const job = jobWith({ pulls: [cut(1, [800, 740]), cut(2, [810, 790])] })
    expect(pictureData(job, 'balance', 'as found', units)?.rows.map(row => row.value)).toEqual([60, 20])
  })
  it('draws lost air against the rule of the job, a typed limit in its place', () => {
    const at = { id: 'l1', stage: 'as found' as const, at: '2026-03-02T10:00:00Z' }
    const pulls = [
      { ...at, test: 'leak-down' as const, cylinder: 4, entry: { form: 'percent' as const, percent: 32 } },
    ]
    const job = jobWith({ pulls })
    const lines = (one: typeof job) =>
      pictureData(one, 'leak-down', 'as found', units)?.limits.map(line => line.at)
    expect(pictureData(job, 'leak-down', 'as found', units)?.rows[0]?.value).toBe(32)
    expect(lines(job)).toEqual([20, 10])
    expect(lines(jobWith({ pulls, circumstances: { specification: { leakDownMaximum: 15 } } }))).toEqual([15])
  })
  it('is none without readings or for a test without one', () => {
    expect(pictureData(jobWith({}), 'compression', 'as found', units)).toBeUndefined()
    expect(pictureData(jobWith({}), 'swap', 'as found', units)).toBeUndefined()
  })
})

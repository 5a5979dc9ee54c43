// The line of the job list.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobSummarySchema } from '../contract/summary-schema.ts'
import { cylindersOf } from '../engine/relations.ts'
import { summarise } from './summary.ts'
import { arbitraryJob } from './testing/arbitrary-job.ts'
import { exampleJob, shotNamed } from './testing/example-job.ts'

const photo = (id: string) => shotNamed(id).photo

describe('the summary of a job', () => {
  it('shows the plugs of the worst cylinders first', () => {
    const states = [
      { cylinder: 2, state: 'fault' as const, headline: 'left out' },
      { cylinder: 1, state: 'sound' as const, headline: 'left out' },
      { cylinder: 3, state: 'unknown' as const, headline: 'left out' },
      { cylinder: 4, state: 'watch' as const, headline: 'left out' },
    ]
    const summary = summarise({ ...exampleJob(), rev: 7, archivedAt: '2026-03-03T00:00:00Z' }, states)
    expect(summary).toEqual({
      id: 'job-1',
      rev: 7,
      createdAt: '2026-03-02T09:00:00Z',
      updatedAt: '2026-03-02T09:00:00Z',
      archived: true,
      demo: false,
      repaired: false,
      complaint: 'Shakes at idle',
      vehicle: 'Invented delivery van',
      vin: '',
      technician: '',
      layoutName: 'Example four',
      states: [
        { cylinder: 1, state: 'sound' },
        { cylinder: 2, state: 'fault' },
        { cylinder: 3, state: 'unknown' },
        { cylinder: 4, state: 'watch' },
      ],
      photos: [photo('s3'), photo('s1'), photo('s4'), photo('s5')],
    })
  })

  it('is a valid line of the index for any job', () => {
    fc.assert(
      fc.property(arbitraryJob, job => {
        const states = cylindersOf(job.layout).map(cylinder => ({ cylinder, state: 'unknown' as const }))
        const summary = summarise(job, states)
        expect(jobSummarySchema.parse(summary)).toEqual(summary)
        expect(new Set(summary.photos).size).toBe(summary.photos.length)
      }),
      { numRuns: 50 },
    )
  })
})

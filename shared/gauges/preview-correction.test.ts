// A correction seen before it is made: readings, verdicts, and what it leaves alone.
import { describe, expect, it } from 'vitest'
import { judgeAll } from './gauges.ts'
import { tradeUnits } from './shown.ts'
import { compression } from './testing/evidence-job.ts'
import { misfires } from './testing/make-pull.ts'
import { applyCommand } from '../job/apply-command.ts'
import type { Job } from '../job/job-schema.ts'
import { exampleJob } from '../job/testing/example-job.ts'
import { changesOf, isCorrectable, previewCorrection } from './preview-correction.ts'

// Cylinder 3 alone was read on a scale whose division was taken for 5 and was 10.
const pulls = [compression(1, 150), compression(2, 152), compression(3, 75), compression(4, 148)]
const job: Job = { ...exampleJob(), pulls }
const third = new Set([pulls[2]?.id ?? ''])
const how = { kind: 'scale' as const, factor: 2 }

describe('the preview of a correction', () => {
  it('tells the verdicts that applying it then brings', () => {
    const preview = previewCorrection(job, 'as found', third, how, tradeUnits)
    const outcome = applyCommand(
      job,
      { command: 'correct pulls', pullIds: [...third], how, reason: 'small division' },
      { now: '2026-03-02T10:00:00Z' },
    )
    if (!outcome.ok) throw new Error(outcome.refusal.what)
    const judged = (one: Job) => judgeAll(one, 'as found', tradeUnits)
    expect(preview.changes).toEqual(changesOf(judged(job), judged(outcome.value)))
    expect(preview.changes).toContainEqual(
      expect.objectContaining({ where: 'Cylinder 3', before: 'outside', after: 'within' }),
    )
    expect(job.pulls).toBe(pulls)
  })

  it('leaves aside what the correction does not alter', () => {
    const none = { ...job, pulls: [...pulls, compression(1, 0)] }
    const all = new Set(none.pulls.map(one => one.id))
    const preview = previewCorrection(none, 'as found', all, how, tradeUnits)
    expect(preview.pulls).toHaveLength(4)
    expect(preview.untouched).toEqual(none.pulls.slice(4))
  })

  it('changes nothing where nothing was chosen', () => {
    const preview = previewCorrection(job, 'as found', new Set(), how, tradeUnits)
    expect(preview).toEqual({ pulls: [], untouched: [], changes: [] })
  })
})

it('offers pulls that hold a pressure or a vacuum only', () => {
  expect(isCorrectable(compression(1, 0))).toBe(true)
  expect(isCorrectable(misfires(1, 4))).toBe(false)
})

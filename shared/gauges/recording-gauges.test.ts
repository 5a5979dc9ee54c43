// What kept recordings say as verdicts, on invented values.
import { describe, expect, it } from 'vitest'
import type { PullOf } from '../job/pull-schema.ts'
import { relativeCompressionGauge } from './recording-gauges.ts'
import { jobWith } from './testing/evidence-job.ts'

type Value = PullOf<'relative compression'>['entry']['values'][number]

const kept = (values: Value[], more: Partial<PullOf<'relative compression'>> = {}) => ({
  id: `recording-${values.length}`,
  test: 'relative compression' as const,
  stage: 'as found' as const,
  at: '2026-03-02T09:00:00Z',
  entry: {
    source: {
      fileName: 'cranking.csv',
      recording: 'a'.repeat(64),
      seconds: 6,
      samples: 60_000,
      mapping: {},
      method: 'invented',
    },
    synced: values.some(one => one.cylinder !== undefined),
    values,
    remarks: [],
  },
  ...more,
})

const sound = [
  { position: 1, cylinder: 1, percent: 100, plusMinus: 2 },
  { position: 2, cylinder: 3, percent: 98, plusMinus: 2 },
  { position: 3, cylinder: 4, percent: 99, plusMinus: 2 },
]

describe('verdicts of a recording', () => {
  it('watches the one that is clearly lower and notes the others', () => {
    const values = [...sound, { position: 4, cylinder: 2, percent: 71, plusMinus: 3 }]
    const verdicts = relativeCompressionGauge.judge(jobWith({ pulls: [kept(values)] }), 'as found')
    expect(verdicts.map(one => [one.cylinder, one.value, one.verdict])).toEqual([
      [1, 100, 'noted'],
      [3, 98, 'noted'],
      [4, 99, 'noted'],
      [2, 71, 'watch'],
    ])
  })

  it('only notes a lower one whose interval reaches the next', () => {
    const values = [...sound, { position: 4, cylinder: 2, percent: 88, plusMinus: 14 }]
    const verdicts = relativeCompressionGauge.judge(jobWith({ pulls: [kept(values)] }), 'as found')
    expect(verdicts.map(one => one.verdict)).toEqual(['noted', 'noted', 'noted', 'noted'])
  })

  it('names no cylinder without a sync signal', () => {
    const values = [...sound, { position: 4, percent: 60, plusMinus: 2 }].map(
      ({ position, percent, plusMinus }) => ({ position, percent, plusMinus }),
    )
    const [, , , low] = relativeCompressionGauge.judge(jobWith({ pulls: [kept(values)] }), 'as found')
    expect(low).toMatchObject({ rule: 'relative compression, position 4', verdict: 'watch' })
    expect(low).not.toHaveProperty('cylinder')
  })

  it('goes by the newest recording that counts', () => {
    const voided = { reason: 'clamp slipped', at: '2026-03-02T10:00:00Z' }
    const job = jobWith({ pulls: [kept(sound), kept(sound.slice(0, 2), { voided })] })
    expect(relativeCompressionGauge.judge(job, 'as found')).toHaveLength(3)
    expect(relativeCompressionGauge.judge(job, 'after repair')).toEqual([])
  })
})

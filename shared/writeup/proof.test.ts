import { describe, expect, it } from 'vitest'
import { compression, cut, jobWith, onePullEach, reading, vacuum } from '../gauges/testing/evidence-job.ts'
import type { Job } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import type { Reading, Tray } from '../job/tray-schema.ts'
import { proofOf, proofTable } from './proof.ts'

const units = { pressure: 'psi', vacuum: 'inHg' } as const
const after = <T extends Pull>(pull: T): T => ({ ...pull, stage: 'after repair' })
const repair = { done: 'Work done.', at: '2026-03-03T09:00:00Z' }

type Story = {
  before?: Pull[]
  after?: Pull[]
  readings?: Record<number, Reading>
  readingsAfter?: Record<number, Reading>
}

function repaired({ before = [], after: pulls = [], readings = {}, readingsAfter }: Story): Job {
  const job = jobWith({ layout: 'i4-1342', pulls: [...before, ...pulls.map(after)], readings })
  const tray = jobWith({ layout: 'i4-1342', readings: readingsAfter ?? {} }).trays[0]
  if (!tray) throw new Error('a job has a tray')
  const second: Tray = { ...tray, id: 'tray-2', name: 'After repair', stage: 'after repair' }
  return { ...job, repair, trays: readingsAfter ? [...job.trays, second] : job.trays }
}
const opening = (story: Story) => proofOf(repaired(story))[0]?.split(':')[0]

const low = onePullEach([150, 100, 151, 150])
const even = onePullEach([150, 149, 151, 150])

describe('a repair', () => {
  it('is unverified when nothing was repeated', () => {
    expect(opening({ before: low })).toBe('Unverified')
  })
  it('is proven when all that failed was repeated and met', () => {
    const lines = proofOf(repaired({ before: low, after: even }))
    expect(lines[0]).toMatch(/^Proven:/)
    expect(lines).toContain(
      'Compression, below highest, cylinder 2: 51\u00a0\u00b1\u00a03.5\u00a0psi as found, after the work 2\u00a0\u00b1\u00a03.5\u00a0psi: within.',
    )
  })
  it('is not proven when it still fails', () => {
    expect(opening({ before: low, after: low })).toBe('Not proven')
  })
  it('is not proven when something else fails now', () => {
    const lines = proofOf(repaired({ before: low, after: onePullEach([150, 149, 100, 150]) }))
    expect(lines[0]).toMatch(/^Not proven/)
    expect(lines).toContain('Outside after the work: compression, below highest, cylinder 3.')
  })
  it('is partly proven when one of the failed tests was not repeated', () => {
    const dead = [90, 0, 92, 91].map((drop, i) => cut(i + 1, [800, 800 - drop]))
    const lines = proofOf(repaired({ before: [...low, ...dead], after: even }))
    expect(lines[0]).toMatch(/^Partly proven/)
    expect(lines.at(-1)).toContain('not repeated')
  })
  it('stays open when the repeat is too near the limit', () => {
    expect(opening({ before: low, after: onePullEach([150, 130, 151, 150]) })).toBe('Partly proven')
  })
  it('after which nothing had failed says just that', () => {
    expect(proofOf(repaired({ before: even, after: even }))).toEqual([
      'Nothing had failed before. Repeated after the work and in order: compression.',
    ])
  })
  it('takes a needle that is steady now as settled by the reading', () => {
    const before = [vacuum('idle', 18.5, { needle: 'regular drop' })]
    expect(opening({ before, after: [vacuum('idle', 19, { needle: 'steady' })] })).toBe('Proven')
  })
  it('does not count a struck-out repeat', () => {
    const struck = even.map(pull => ({ ...pull, voided: { reason: 'slip', at: '2026-03-03T09:00:00Z' } }))
    expect(opening({ before: low, after: struck })).toBe('Unverified')
  })
})

describe('oil in the well', () => {
  const readings = { 3: reading('normal', { oilInWell: true }) }
  it('is proven gone by a dry well', () => {
    expect(opening({ readings, readingsAfter: { 3: reading('normal', { oilInWell: false }) } })).toBe(
      'Proven',
    )
  })
  it('is open while the well was not noted, and not proven while wet', () => {
    expect(opening({ readings, readingsAfter: { 3: reading('normal') } })).toBe('Unverified')
    expect(opening({ readings, readingsAfter: readings })).toBe('Not proven')
  })
})

describe('a plug', () => {
  const readings = { 2: reading('carbon') }
  it('that looks good again proves nothing before it has run', () => {
    const lines = proofOf(repaired({ readings, readingsAfter: { 2: reading('normal') } }))
    expect(lines[0]).toMatch(/^Unverified/)
    expect(lines[1]).toContain('colour counts once it has run')
  })
  it('that is worn or damaged is settled by a new one', () => {
    expect(opening({ readings: { 2: reading('damaged') }, readingsAfter: { 2: reading('normal') } })).toBe(
      'Proven',
    )
  })
  it('that still reads carbon is not settled', () => {
    expect(opening({ readings, readingsAfter: readings })).toBe('Not proven')
  })
})

it('stands side by side in a table', () => {
  expect(proofTable(repaired({ before: low, after: even }), units)?.rows).toEqual([
    [
      'compression, below highest',
      'cylinder 2',
      '51\u00a0\u00b1\u00a03.5\u00a0psi',
      '2\u00a0\u00b1\u00a03.5\u00a0psi: within',
      '\u221249\u00a0\u00b1\u00a07\u00a0psi',
    ],
    [
      'compression, share of highest',
      'cylinder 2',
      '66.2\u00a0\u00b1\u00a02\u00a0%',
      '98.7\u00a0\u00b1\u00a02.3\u00a0%: within',
      '+32.5\u00a0\u00b1\u00a04.3\u00a0%',
    ],
  ])
  expect(proofTable(repaired({ before: even, after: even }), units)).toBeUndefined()
})

it('says nothing without a repair', () => {
  const job = jobWith({ pulls: [compression(1, 150)] })
  expect(proofOf(job)).toEqual([])
  expect(proofTable(job, units)).toBeUndefined()
})

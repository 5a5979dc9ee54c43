// Looking up trays, slots, shots and the pulls that count.
import { describe, expect, it } from 'vitest'
import { currentReading, findSlot, findTray, photosOf, shotsOf, validPulls } from './current.ts'
import { compressionPull, exampleJob, oilReading, shotNamed } from './testing/example-job.ts'

const job = exampleJob()
const voided = { reason: 'Hose leaked', at: '2026-03-02T09:55:00Z' }

describe('looking things up in a job', () => {
  it('finds trays, slots and readings, or nothing', () => {
    const tray = findTray(job, 't1')
    expect(tray).toBe(job.trays[0])
    expect(findTray(job, 't2')).toBeUndefined()
    const slot = tray && findSlot(tray, { cylinder: 2 })
    expect(slot && currentReading(slot)).toBe(oilReading)
    expect(tray && findSlot(tray, { cylinder: 2, plug: 'A' })).toBeUndefined()
  })

  it('counts only pulls of the test and stage that are not voided', () => {
    const pulls = [
      compressionPull('a', 1),
      { ...compressionPull('b', 1), voided },
      { ...compressionPull('c', 1), stage: 'after repair' as const },
      compressionPull('d', 2),
    ]
    const measured = { ...job, pulls }
    expect(validPulls(measured, 'compression', 'as found').map(({ id }) => id)).toEqual(['a', 'd'])
    expect(validPulls(measured, 'compression', 'after repair').map(({ id }) => id)).toEqual(['c'])
    expect(validPulls(measured, 'balance', 'as found')).toEqual([])
  })

  it('lists every shot, and every photo once', () => {
    expect(shotsOf(job).map(({ id }) => id)).toEqual(['s1', 's2', 's3', 's4', 's5'])
    const [tray] = job.trays
    const twice = tray && {
      ...job,
      trays: [{ ...tray, unsorted: [...tray.unsorted, shotNamed('s1', { id: 'x' })] }],
    }
    expect(twice && photosOf(twice)).toEqual(photosOf(job))
    expect(photosOf(job)).toHaveLength(5)
  })
})

// How a job begins.
import { describe, expect, it } from 'vitest'
import { newJob } from './new-job.ts'
import { parseJob } from './parse-job.ts'
import { fourInLine, now, twinPlugFour } from './testing/example-job.ts'

const start = {
  id: 'j1',
  trayId: 't1',
  now,
  complaint: 'Will not start when hot',
  engine: { vehicle: 'Invented pickup' },
  layout: fourInLine,
}

describe('a new job', () => {
  it('has one tray, as found, with an empty slot per plug, and is a valid document', () => {
    const job = newJob({ ...start, layout: twinPlugFour, technician: 'Ana', demo: true })
    expect(job.trays).toHaveLength(1)
    expect(job.trays[0]).toMatchObject({ id: 't1', name: 'As found', stage: 'as found', unsorted: [] })
    expect(job.trays[0]?.slots.map(({ cylinder, plug }) => `${cylinder}${plug}`)).toEqual([
      '1A',
      '1B',
      '2A',
      '2B',
      '3A',
      '3B',
      '4A',
      '4B',
    ])
    expect(parseJob(JSON.parse(JSON.stringify(job)))).toEqual({ ok: true, value: job })
  })

  it('leaves out what is not known', () => {
    const job = newJob({ ...start, technician: '', demo: false })
    expect(job).not.toHaveProperty('technician')
    expect(job).not.toHaveProperty('demo')
    expect(job).not.toHaveProperty('rev')
    expect(job).not.toHaveProperty('hash')
  })
})

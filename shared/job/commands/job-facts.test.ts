// Complaint, engine, circumstances, technician, notes, archive, repair and write-up choices.
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../apply-command.ts'
import type { Command } from '../command-schema.ts'
import { context, exampleJob, now, valueOf } from '../testing/example-job.ts'

const job = exampleJob()
const after = (command: Command, from = job) => valueOf(applyCommand(from, command, context))

describe('facts of the job', () => {
  it('are set, with the time of the change, and share the rest', () => {
    const changed = after({ command: 'set complaint', complaint: 'Burns oil' })
    expect(changed).toEqual({ ...job, complaint: 'Burns oil', updatedAt: now })
    expect(changed.trays).toBe(job.trays)
    expect(job.complaint).toBe('Shakes at idle')
    const engine = { vehicle: 'Invented boat', odometer: { value: 812, unit: 'h' as const } }
    expect(after({ command: 'set engine', engine }).engine).toEqual(engine)
    const circumstances = { altitude: { value: 1600, unit: 'm' as const }, engineWarm: true }
    expect(after({ command: 'set circumstances', circumstances }).circumstances).toEqual(circumstances)
  })

  it('that are set to what they are leave the very same job', () => {
    expect(after({ command: 'set complaint', complaint: 'Shakes at idle' })).toBe(job)
    expect(after({ command: 'set engine', engine: { vehicle: 'Invented delivery van' } })).toBe(job)
    expect(after({ command: 'set circumstances', circumstances: {} })).toBe(job)
    expect(after({ command: 'set technician', technician: null })).toBe(job)
    expect(after({ command: 'set notes', notes: '' })).toBe(job)
    expect(after({ command: 'set archived', archived: false })).toBe(job)
  })

  it('can be taken away, leaving no empty field behind', () => {
    const named = after({ command: 'set technician', technician: 'Ana' })
    expect(named.technician).toBe('Ana')
    expect(after({ command: 'set technician', technician: null }, named)).not.toHaveProperty('technician')
    const noted = after({ command: 'set notes', notes: 'Heat shield loose' })
    expect(noted.notes).toBe('Heat shield loose')
    expect(after({ command: 'set notes', notes: '' }, noted)).not.toHaveProperty('notes')
  })

  it('archive the job with the time of the first archiving', () => {
    const archived = after({ command: 'set archived', archived: true })
    expect(archived.archivedAt).toBe(now)
    const later = valueOf(
      applyCommand(archived, { command: 'set archived', archived: true }, { now: '2026-04-01T00:00:00Z' }),
    )
    expect(later).toBe(archived)
    expect(after({ command: 'set archived', archived: false }, archived)).not.toHaveProperty('archivedAt')
  })
})

describe('the repair', () => {
  it('is stamped with time and person, and taken away by null', () => {
    const repaired = after({ command: 'set repair', repair: { done: 'Rings replaced', cause: 'Worn rings' } })
    expect(repaired.repair).toEqual({ done: 'Rings replaced', cause: 'Worn rings', at: now, by: 'Ana' })
    expect(after({ command: 'set repair', repair: null }, repaired)).not.toHaveProperty('repair')
  })

  it('said again in the same words keeps its first stamp', () => {
    const repaired = after({ command: 'set repair', repair: { done: 'Rings replaced' } })
    const again = applyCommand(
      repaired,
      { command: 'set repair', repair: { done: 'Rings replaced' } },
      { now: '2026-05-01T00:00:00Z', person: 'Ben' },
    )
    expect(valueOf(again)).toBe(repaired)
  })
})

describe('the write-up choices', () => {
  it('take shots of this job only, each once', () => {
    const writeUp = { shots: ['s3', 's1'], noteForCustomer: 'Please call' }
    expect(after({ command: 'set write-up', writeUp }).writeUp).toEqual(writeUp)
    const unknown = applyCommand(job, { command: 'set write-up', writeUp: { shots: ['s9'] } }, context)
    expect(unknown).toMatchObject({ ok: false, refusal: { where: 'shot s9' } })
    const twice = applyCommand(job, { command: 'set write-up', writeUp: { shots: ['s1', 's1'] } }, context)
    expect(twice).toMatchObject({ ok: false, refusal: { where: 'shot s1' } })
  })
})

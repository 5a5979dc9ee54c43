// Undo and redo step by step, and what they do to pulls.
import { describe, expect, it } from 'vitest'
import { applyCommand } from './apply-command.ts'
import { commandLabel } from './command-label.ts'
import type { Command } from './command-schema.ts'
import { emptyHistory, record, redo, redoLabel, takenBackByUndo, undo, undoLabel } from './history.ts'
import type { History } from './history.ts'
import type { Job } from './job-schema.ts'
import { compressionPull, context, exampleJob, now, valueOf } from './testing/example-job.ts'

const job = exampleJob()
type State = { job: Job; history: History }
const start: State = { job, history: emptyHistory() }
const apply = ({ job, history }: State, command: Command): State => {
  const after = valueOf(applyCommand(job, command, context))
  return { job: after, history: record(history, job, after, commandLabel(command)) }
}
const undone = ({ job, history }: State) => valueOf(undo(history, job, context))
const redone = ({ job, history }: State) => valueOf(redo(history, job, context))
const setNotes = (notes: string): Command => ({ command: 'set notes', notes })

describe('undo and redo', () => {
  it('have labels, and refuse when there is nothing', () => {
    expect(undoLabel(start.history)).toBeNull()
    expect(redoLabel(start.history)).toBeNull()
    expect(undo(start.history, job, context)).toMatchObject({
      ok: false,
      refusal: { what: 'There is nothing to undo.' },
    })
    expect(redo(start.history, job, context)).toMatchObject({
      ok: false,
      refusal: { what: 'There is nothing to redo.' },
    })
    const pulled = apply(start, { command: 'add pull', pull: compressionPull('p2', 3) })
    expect(undoLabel(pulled.history)).toBe('pull 148 psi, cylinder 3')
    expect(redoLabel(undone(pulled).history)).toBe('pull 148 psi, cylinder 3')
  })

  it('go back and forth, with fields that were not there before', () => {
    const first = apply(start, setNotes('one'))
    const second = apply(first, setNotes('two'))
    const back = undone(second)
    expect(back.job.notes).toBe('one')
    const start2 = undone(back)
    expect(start2.job).toEqual({ ...job, updatedAt: now })
    expect(start2.job).not.toHaveProperty('notes')
    expect(redone(redone(start2)).job).toEqual(second.job)
  })

  it('forget what could be redone once something else is done', () => {
    const changed = apply(undone(apply(start, setNotes('one'))), setNotes('other'))
    expect(redoLabel(changed.history)).toBeNull()
    expect(undoLabel(changed.history)).toBe('notes')
  })

  it('keep revision and hash of the job as it was stored', () => {
    const changed = apply(start, setNotes('one'))
    const stored = { ...changed.job, rev: 8, hash: 'a'.repeat(64) }
    const back = valueOf(undo(changed.history, stored, context))
    expect(back.job).toMatchObject({ rev: 8, hash: 'a'.repeat(64) })
  })

  it('do not record what only the store changed', () => {
    expect(record(start.history, job, { ...job, rev: 3, updatedAt: now }, 'nothing')).toBe(start.history)
  })

  it('refuse when the job was changed in another way since, rather than throw that away', () => {
    const changed = apply(start, setNotes('one'))
    const meanwhile = { ...changed.job, notes: 'from elsewhere' }
    expect(undo(changed.history, meanwhile, context)).toMatchObject({
      ok: false,
      refusal: { where: 'notes' },
    })
    const unrelated = { ...changed.job, complaint: 'from elsewhere' }
    const back = valueOf(undo(changed.history, unrelated, context))
    expect(back.job.complaint).toBe('from elsewhere')
    expect(back.job.notes).toBeUndefined()
    const again = redo(back.history, { ...back.job, notes: 'third' }, context)
    expect(again).toMatchObject({ ok: false, refusal: { where: 'notes' } })
  })
})

describe('undo and pulls', () => {
  const pull = compressionPull('p2', 4)
  const pulled = apply(start, { command: 'add pull', pull })

  it('keep a pull that is taken back, voided, and redo lets it count again', () => {
    const back = undone(pulled)
    expect(back.job.pulls).toEqual([
      job.pulls[0],
      { ...pull, voided: { reason: takenBackByUndo, at: now, by: 'Ana' } },
    ])
    expect(redone(back).job.pulls).toEqual([job.pulls[0], pull])
  })

  it('carry such a pull through every further step back and forth', () => {
    const later = apply(apply(undone(pulled), setNotes('one')), {
      command: 'add pull',
      pull: compressionPull('p3', 1),
    })
    const back = undone(undone(later))
    expect(back.job.pulls.map(({ id, voided }) => [id, voided?.reason])).toEqual([
      ['p1', undefined],
      ['p2', takenBackByUndo],
      ['p3', takenBackByUndo],
    ])
    expect(redone(redone(back)).job).toEqual(later.job)
  })

  it('undo a voiding and redo it with the reason it had', () => {
    const voided = apply(pulled, { command: 'void pull', pullId: 'p1', reason: 'Hose leaked' })
    const back = undone(voided)
    expect(back.job.pulls[0]).not.toHaveProperty('voided')
    expect(redone(back).job.pulls[0]?.voided).toEqual({ reason: 'Hose leaked', at: now, by: 'Ana' })
  })

  it('undo the taking back of a voiding', () => {
    const voided = apply(pulled, { command: 'void pull', pullId: 'p1', reason: 'Hose leaked' })
    const counted = apply(voided, { command: 'unvoid pull', pullId: 'p1' })
    expect(undone(counted).job.pulls[0]?.voided?.reason).toBe('Hose leaked')
  })
})

// Adding, voiding and un-voiding pulls.
import { describe, expect, it } from 'vitest'
import { applyCommand } from '../apply-command.ts'
import type { Command } from '../command-schema.ts'
import { validPulls } from '../current.ts'
import { limits } from '../limits.ts'
import { compressionPull, context, exampleJob, now, valueOf } from '../testing/example-job.ts'

const job = exampleJob()
const attempt = (command: Command, from = job) => applyCommand(from, command, context)
const voidIt = { command: 'void pull', pullId: 'p1', reason: 'Gauge hose leaked' } as const

describe('pulls', () => {
  it('are added at the end, by the person at work unless they say', () => {
    const { by: _, ...unsigned } = compressionPull('p2', 4)
    const added = valueOf(attempt({ command: 'add pull', pull: unsigned }))
    expect(added.pulls).toEqual([job.pulls[0], { ...unsigned, by: 'Ana' }])
    const signed = valueOf(attempt({ command: 'add pull', pull: compressionPull('p2', 4) }))
    expect(signed.pulls[1]?.by).toBe('Ben')
  })

  it('are not added twice, for a cylinder that is not there, or past the limit', () => {
    expect(attempt({ command: 'add pull', pull: compressionPull('p1', 4) })).toMatchObject({
      ok: false,
      refusal: { where: 'pull p1' },
    })
    expect(attempt({ command: 'add pull', pull: compressionPull('p2', 5) })).toMatchObject({
      ok: false,
      refusal: { what: 'The engine of this job has no cylinder 5.', where: 'compression pull of cylinder 5' },
    })
    const pulls = Array.from({ length: limits.pullsPerJob }, (_, i) => compressionPull(`m${i}`, 1))
    expect(attempt({ command: 'add pull', pull: compressionPull('p2', 1) }, { ...job, pulls }).ok).toBe(false)
  })

  it('are voided with reason, time and person, once', () => {
    const voided = valueOf(attempt(voidIt))
    expect(voided.pulls).toEqual([
      { ...compressionPull('p1', 3), voided: { reason: 'Gauge hose leaked', at: now, by: 'Ana' } },
    ])
    expect(validPulls(voided, 'compression', 'as found')).toEqual([])
    expect(attempt(voidIt, voided)).toMatchObject({
      ok: false,
      refusal: { what: 'This pull is voided already: Gauge hose leaked' },
    })
    expect(attempt({ ...voidIt, pullId: 'p9' })).toMatchObject({ ok: false, refusal: { where: 'pull p9' } })
  })

  it('count again when the voiding is taken back', () => {
    const voided = valueOf(attempt(voidIt))
    const back = valueOf(attempt({ command: 'unvoid pull', pullId: 'p1' }, voided))
    expect(back.pulls).toEqual(job.pulls)
    expect(back.pulls[0]).not.toHaveProperty('voided')
    expect(attempt({ command: 'unvoid pull', pullId: 'p1' }).ok).toBe(false)
  })
})

// What stands after "Undo" for each command.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { commandLabel } from './command-label.ts'
import type { Command } from './command-schema.ts'
import { arbitraryCommand } from './testing/arbitrary-command.ts'
import { compressionPull, exampleJob, shotNamed, twinPlugFour } from './testing/example-job.ts'

const wet = compressionPull('p2', 3, 165)
const common = { id: 'p3', stage: 'as found', at: '2026-03-02T09:50:00Z' } as const
const trayId = 't1'

const labels: [string, Command][] = [
  ['pull 148 psi, cylinder 3', { command: 'add pull', pull: compressionPull('p1', 3) }],
  [
    'wet pull 165 psi, cylinder 3',
    { command: 'add pull', pull: { ...wet, entry: { ...wet.entry, wet: true } } },
  ],
  [
    'cut-out 850 to 790 rpm, cylinder 2',
    {
      command: 'add pull',
      pull: { ...common, test: 'balance', cylinder: 2, entry: { rpmBefore: 850, rpmAfter: 790 } },
    },
  ],
  [
    'vacuum 18 inHg, idle',
    {
      command: 'add pull',
      pull: { ...common, test: 'vacuum', entry: { phase: 'idle', reading: { value: 18, unit: 'inHg' } } },
    },
  ],
  ['layout Example four, twin plug', { command: 'change layout', layout: twinPlugFour }],
  ['add 1 shot, cylinder 4', { command: 'add shots', trayId, shots: [shotNamed('a')], to: { cylinder: 4 } }],
  ['move 2 shots to unsorted', { command: 'move shots', trayId, shots: ['a', 'b'], to: null }],
  [
    'swap cylinders 3A and 3B',
    { command: 'swap slots', trayId, a: { cylinder: 3, plug: 'A' }, b: { cylinder: 3, plug: 'B' } },
  ],
  [
    'reading oil-wetted, cylinders 1, 2 and 3',
    {
      command: 'set reading',
      trayId,
      slots: [{ cylinder: 1 }, { cylinder: 2 }, { cylinder: 3 }],
      change: { condition: 'oil-wetted' },
    },
  ],
  [
    'reading gap and note, cylinder 1',
    {
      command: 'set reading',
      trayId,
      slots: [{ cylinder: 1 }],
      change: { details: { gap: null }, note: 'x' },
    },
  ],
  ['void pull: Hose leaked', { command: 'void pull', pullId: 'p1', reason: 'Hose leaked' }],
  ['remove repair', { command: 'set repair', repair: null }],
]

describe('the label of a command', () => {
  it.each(labels)('%s', (label, command) => {
    expect(commandLabel(command)).toBe(label)
  })

  it('is there for every command, in one line without undefined', () => {
    const job = exampleJob()
    const seen = new Set<string>()
    fc.assert(
      fc.property(arbitraryCommand, make => {
        const command = make(job, 1)
        seen.add(command.command)
        expect(commandLabel(command)).toMatch(/^\S[^\n]*$/)
        expect(commandLabel(command)).not.toMatch(/undefined|null|\[object/)
      }),
      { numRuns: 500 },
    )
    expect(seen.size).toBe(27)
  })
})

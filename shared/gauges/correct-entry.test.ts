// Corrections of a misread gauge: every number moves, nothing else does, and the entry as made stays.
import { expect, it } from 'vitest'
import type { Pull, PullOf } from '../job/pull-schema.ts'
import { asCorrected } from '../job/current.ts'
import { correctPull } from './correct-entry.ts'

const pull: PullOf<'compression'> = {
  id: 'p1',
  stage: 'as found',
  at: '2026-03-02T09:14:00Z',
  test: 'compression',
  cylinder: 3,
  entry: { final: { value: 300, unit: 'psi' }, firstPuff: { value: 220, unit: 'psi' }, puffs: 5 },
}
const because = { reason: 'a division is 5, not 10', at: '2026-03-02T10:00:00Z', by: 'Kim' }

const correctedBy = (how: Parameters<typeof correctPull>[1]['how'], from: Pull = pull): Pull => {
  const outcome = correctPull(from, { how, ...because })
  if (!outcome.ok) throw new Error(outcome.refusal.what)
  return outcome.value
}

it('scales every pressure and keeps the entry as it was made', () => {
  const half = correctedBy({ kind: 'scale', factor: 0.5 })
  expect(half.entry).toEqual(pull.entry)
  expect(asCorrected(half).entry).toEqual({
    final: { value: 150, unit: 'psi' },
    firstPuff: { value: 110, unit: 'psi' },
    puffs: 5,
  })
  expect(half.corrections?.[0]).toMatchObject(because)
})

it('builds on the correction before, and goes back to the entry as made', () => {
  const half = correctedBy({ kind: 'scale', factor: 0.5 })
  const lower = correctedBy({ kind: 'offset', add: -4 }, half)
  expect(asCorrected(lower).entry).toMatchObject({ final: { value: 146, unit: 'psi' } })
  const back = correctedBy({ kind: 'as entered' }, lower)
  expect(asCorrected(back).entry).toEqual(pull.entry)
  expect(back.corrections).toHaveLength(3)
})

it('refuses what changes nothing and what fits no such test', () => {
  expect(correctPull(pull, { how: { kind: 'scale', factor: 1 }, ...because }).ok).toBe(false)
  expect(correctPull(pull, { how: { kind: 'unit', unit: 'inHg' }, ...because }).ok).toBe(false)
})

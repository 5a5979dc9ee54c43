// A correction as typed, and the units that it would be added in.
import { describe, expect, it } from 'vitest'
import { compression } from '../../../../../shared/gauges/testing/evidence-job.ts'
import { emptyDraft, howOf } from './correction-draft.ts'
import { enteredUnits } from './entered-units.ts'

it('names each unit that was entered once', () => {
  expect(enteredUnits([compression(1, 150), compression(2, 152)])).toEqual(['psi'])
})

describe('a correction as typed', () => {
  it('takes the real division over the one it was taken for', () => {
    expect(howOf({ ...emptyDraft, read: '10', real: '5' })).toEqual({ kind: 'scale', factor: 0.5 })
  })
  it('waits for numbers that say something', () => {
    expect(howOf({ ...emptyDraft, read: '10', real: '10' })).toBeUndefined()
    expect(howOf({ ...emptyDraft, read: '0', real: '5' })).toBeUndefined()
    expect(howOf({ ...emptyDraft, kind: 'offset', add: 'x' })).toBeUndefined()
    expect(howOf({ ...emptyDraft, kind: 'unit' })).toBeUndefined()
  })
})

// A drag may come from anywhere; only what this page packed is taken.
import { expect, it } from 'vitest'
import { packShots, packSlot, unpackShots, unpackSlot } from './drag-payload.ts'

it('packs and unpacks shots and slots', () => {
  expect(unpackShots(packShots(['a1', 'b_2']))).toEqual(['a1', 'b_2'])
  expect(unpackSlot(packSlot({ cylinder: 12 }))).toEqual({ cylinder: 12 })
  expect(unpackSlot(packSlot({ cylinder: 3, plug: 'B' }))).toEqual({ cylinder: 3, plug: 'B' })
})

it('takes nothing from a foreign drag', () => {
  expect(unpackShots('<img> ../x')).toEqual([])
  expect(unpackSlot('cylinder 3')).toBeUndefined()
})

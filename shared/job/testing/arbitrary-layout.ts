// Random engines for property tests: one or two banks, any firing order, even firing, one or two plugs a cylinder.
import * as fc from 'fast-check'
import type { Layout } from '../../engine/layout-schema.ts'

const inline = fc.constantFrom(1, 2, 3, 4, 5, 6, 8).map(count => ({
  arrangement: 'inline' as const,
  banks: [{ name: 'Bank 1', cylinders: Array.from({ length: count }, (_, i) => i + 1) }],
}))

/** Numbered bank by bank or across, as both are in use. */
const twoBanks = fc
  .record({
    arrangement: fc.constantFrom('vee' as const, 'flat' as const),
    each: fc.constantFrom(1, 2, 3, 4, 5, 6, 8),
    across: fc.boolean(),
  })
  .map(({ arrangement, each, across }) => {
    const places = Array.from({ length: each }, (_, i) => i)
    const number = (bank: number, place: number) => (across ? 2 * place + bank : bank * each + place) + 1
    const bank = (index: number) => ({
      name: index === 0 ? 'Left' : 'Right',
      cylinders: places.map(place => number(index, place)),
    })
    return { arrangement, banks: [bank(0), bank(1)] }
  })

/** Structurally sound layouts of 1 to 16 cylinders; firing orders are permutations, not necessarily ones in use. */
export const arbitraryLayout: fc.Arbitrary<Layout> = fc
  .oneof(inline, twoBanks)
  .chain(({ arrangement, banks }) => {
    const cylinders = banks.flatMap(bank => bank.cylinders)
    return fc.record({
      id: fc.integer({ min: 1, max: 9999 }).map(n => `random-${n}`),
      name: fc.integer({ min: 1, max: 9999 }).map(n => `Random engine ${n}`),
      arrangement: fc.constant(arrangement),
      banks: fc.constant(banks),
      firingOrder: fc.shuffledSubarray(cylinders, {
        minLength: cylinders.length,
        maxLength: cylinders.length,
      }),
      intervalsDeg: fc.constant(cylinders.map(() => 720 / cylinders.length)),
      plugsPerCylinder: fc.constantFrom(1 as const, 2 as const),
      front: fc.constantFrom('top' as const, 'bottom' as const, 'left' as const, 'right' as const),
    })
  })

// Random engines for the laws of layouts: any split into banks, any numbering, order and firing angles, even or not,
// several cylinders at once allowed. Structurally sound, not engines anyone built.
import * as fc from 'fast-check'
import type { Layout } from '../layout-schema.ts'

const shuffled = (cylinders: number[]): fc.Arbitrary<number[]> =>
  fc.shuffledSubarray(cylinders, { minLength: cylinders.length, maxLength: cylinders.length })

/** Angles on a coarse grid, so that half a cycle apart comes up often. */
const firingAngles = (count: number): fc.Arbitrary<number[]> =>
  fc
    .array(
      fc.integer({ min: 0, max: 23 }).map(step => step * 30),
      { minLength: count - 1, maxLength: count - 1 },
    )
    .map(later => [0, ...later.toSorted((a, b) => a - b)])

const intervalsOf = (angles: number[]): number[] => angles.map((angle, i) => (angles[i + 1] ?? 720) - angle)

/** Built by hand, so nothing here leans on the code under test. */
export const arbitraryEngine: fc.Arbitrary<Layout> = fc.integer({ min: 1, max: 16 }).chain(count => {
  const numbers = Array.from({ length: count }, (_, i) => i + 1)
  return fc
    .record({
      numbering: shuffled(numbers),
      firingOrder: shuffled(numbers),
      angles: firingAngles(count),
      split: fc.integer({ min: 1, max: Math.max(1, count - 1) }),
      kind: fc.constantFrom('inline' as const, 'vee' as const, 'flat' as const),
      plugsPerCylinder: fc.constantFrom(1 as const, 2 as const),
      front: fc.constantFrom('top' as const, 'bottom' as const, 'left' as const, 'right' as const),
    })
    .map(({ numbering, firingOrder, angles, split, kind, plugsPerCylinder, front }) => {
      const arrangement = count === 1 ? 'inline' : kind
      return {
        id: 'random-engine',
        name: 'Random engine',
        arrangement,
        banks:
          arrangement === 'inline'
            ? [{ name: 'row', cylinders: numbering }]
            : [
                { name: 'bank 1', cylinders: numbering.slice(0, split) },
                { name: 'bank 2', cylinders: numbering.slice(split) },
              ],
        firingOrder,
        intervalsDeg: intervalsOf(angles),
        plugsPerCylinder,
        front,
      }
    })
})

// A sound layout passes whatever it looks like; each thing that can be wrong is named in its own field and in words.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkLayout } from './check-layout.ts'
import { builtInLayouts, layoutById, withPlugsPerCylinder } from './layouts.ts'
import type { Layout } from './layout-schema.ts'
import { arbitraryEngine } from './testing/arbitrary-engine.ts'

const v6 = layoutById('v6-oddeven-123456')
if (!v6) throw new Error('no vee six')
const problems = (changed: Partial<Layout>) => checkLayout({ ...v6, ...changed })
const banks = (first: number[], second: number[]) => [
  { name: 'odd bank', cylinders: first },
  { name: 'even bank', cylinders: second },
]

describe('a sound layout', () => {
  it('passes: every built-in, with one plug a cylinder and with two', () => {
    for (const layout of builtInLayouts)
      for (const plugs of [1, 2] as const)
        expect(checkLayout(withPlugsPerCylinder(layout, plugs))).toEqual([])
  })
  it('passes: any engine that keeps the rules', () => {
    fc.assert(
      fc.property(arbitraryEngine, layout => {
        expect(checkLayout(layout)).toEqual([])
      }),
    )
  })
  it('may have rounded intervals, as published ones are', () => {
    expect(problems({ intervalsDeg: [120, 120, 120, 120, 120, 119.9] })).toEqual([])
  })
})

describe('a fault is caught', () => {
  it.each<[string, Partial<Layout>, ReturnType<typeof checkLayout>]>([
    [
      'a cylinder with two places',
      { banks: banks([1, 3, 5], [2, 4, 3]) },
      [
        {
          field: 'banks',
          message: 'Cylinder 3 stands in the banks more than once: give each cylinder one place.',
        },
        {
          field: 'firingOrder',
          message: 'The firing order names 6, which stands in no bank: correct one or the other.',
        },
      ],
    ],
    [
      'a gap in the numbers',
      { banks: banks([1, 3, 5], [2, 4, 7]), firingOrder: [1, 2, 3, 4, 5, 7] },
      [{ field: 'banks', message: 'Number the cylinders from 1 to 6 without a gap: 6 is missing.' }],
    ],
    [
      'a cylinder that fires twice',
      { firingOrder: [1, 2, 3, 4, 5, 5] },
      [
        {
          field: 'firingOrder',
          message: 'Cylinder 5 is in the firing order more than once: each fires once a cycle.',
        },
        { field: 'firingOrder', message: 'Cylinder 6 is missing from the firing order: add it.' },
      ],
    ],
    [
      'too few intervals',
      { intervalsDeg: [180, 180, 180, 180] },
      [
        {
          field: 'intervalsDeg',
          message: 'Give one firing interval for each cylinder: 6 are needed, 4 are there.',
        },
      ],
    ],
    [
      'a cycle that is not whole',
      { intervalsDeg: [120, 120, 120, 120, 120, 100] },
      [{ field: 'intervalsDeg', message: 'The firing intervals must add up to 720°; they give 700°.' }],
    ],
    [
      'an inline engine with two banks',
      { arrangement: 'inline' },
      [{ field: 'arrangement', message: 'An inline engine has one bank; this has 2.' }],
    ],
    [
      'a vee engine with one bank',
      { banks: [{ name: 'row', cylinders: [1, 2, 3, 4, 5, 6] }] },
      [{ field: 'arrangement', message: 'A vee or flat engine has two banks; this has 1.' }],
    ],
    [
      'two banks of one name',
      {
        banks: [
          { name: 'left', cylinders: [1, 3, 5] },
          { name: 'left ', cylinders: [2, 4, 6] },
        ],
      },
      [{ field: 'banks', message: 'More than one bank is named "left": name them apart.' }],
    ],
    [
      'a bank without cylinders',
      { banks: banks([1, 2, 3, 4, 5, 6], []) },
      [{ field: 'banks', message: 'Bank "even bank" has no cylinder: give it one or take the bank away.' }],
    ],
  ])('%s', (_, changed, expected) => expect(problems(changed)).toEqual(expected))

  it('whichever cylinder of any engine is left out of the order or put in twice', () => {
    fc.assert(
      fc.property(arbitraryEngine, fc.nat(), (layout, pick) => {
        const at = pick % layout.firingOrder.length
        const without = layout.firingOrder.filter((_, i) => i !== at)
        const fields = checkLayout({ ...layout, firingOrder: without }).map(one => one.field)
        expect(fields).toContain('firingOrder')
        const again = layout.firingOrder.map((one, i) =>
          i === at ? (layout.firingOrder[at - 1] ?? 17) : one,
        )
        expect(checkLayout({ ...layout, firingOrder: again }).length).toBeGreaterThan(0)
      }),
    )
  })
})
